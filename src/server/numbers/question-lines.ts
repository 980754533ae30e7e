import type { Content } from '#engine/compile/content.ts';
import { topicNames } from '#engine/takeoff/topic.ts';
import type { Text } from '#engine/text.ts';
import { fitted } from '#engine/written/fitted.ts';
import { bankName } from '../exams/bank-name.ts';
import { wallTexts } from '../exams/wall-name.ts';
import type { ItemNumbers } from './part-numbers.ts';

type Named = { readonly ask: Text; readonly topic: Text };

const made = new WeakMap<object, ReadonlyMap<string, Named>>();

/** What can stand on a form, by its name in the bank, with the numbers of its data sheet put in. */
export function questionTexts(content: Content): ReadonlyMap<string, Named> {
  const known = made.get(content);
  if (known) return known;
  const questions = [...content.topics.values()].flatMap(({ title, questions }) =>
    questions.map((question): readonly [string, Named] => [
      question.id,
      { ask: (fitted(question, content) ?? question).ask, topic: title },
    ]),
  );
  const families = [...content.takeoffs.values()].map(
    ({ id, title, topic }): readonly [string, Named] => [
      id,
      { ask: title, topic: topicNames[topic] },
    ],
  );
  const texts = new Map([...questions, ...families, ...wallTexts(content)]);
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
  ask: texts.get(bankName(id))?.ask,
  topic: texts.get(bankName(id))?.topic,
  isRetired: retired.has(bankName(id)),
  open,
  verdict,
});
