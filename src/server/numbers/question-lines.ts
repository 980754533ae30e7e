import type { Content } from '#engine/compile/content.ts';
import type { Text } from '#engine/text.ts';
import { fitted } from '#engine/written/fitted.ts';
import type { ItemNumbers } from './part-numbers.ts';

type Named = { readonly ask: Text; readonly topic: Text };

const made = new WeakMap<object, ReadonlyMap<string, Named>>();

/** Every question of the content by its id, with the numbers of its data sheet put in. */
export function questionTexts(content: Content): ReadonlyMap<string, Named> {
  const known = made.get(content);
  if (known) return known;
  const texts = new Map(
    [...content.topics.values()].flatMap(({ title, questions }) =>
      questions.map((question): readonly [string, Named] => [
        question.id,
        { ask: (fitted(question, content) ?? question).ask, topic: title },
      ]),
    ),
  );
  made.set(content, texts);
  return texts;
}

/** What a list shows of a question. */
export const lineOf = (
  { id, open, verdict }: ItemNumbers,
  texts: ReadonlyMap<string, Named>,
  retired: ReadonlySet<string>,
) => ({
  id,
  ask: texts.get(id)?.ask,
  topic: texts.get(id)?.topic,
  isRetired: retired.has(id),
  open,
  verdict,
});
