import { error } from '@sveltejs/kit';
import { approximate } from '#engine/measure/rational.ts';
import { within } from '#server/access/act.ts';
import { currentContent } from '#server/current-content.ts';
import { numbersOf } from '#server/numbers/numbers.ts';
import { partNamed } from '#server/numbers/part-numbers.ts';
import { lineOf, questionTexts } from '#server/numbers/question-lines.ts';
import { retiredIn } from '#server/numbers/retire.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals, params }) => {
  const { db, act } = within(locals);
  const { company } = act.by;
  const content = await currentContent();
  const named = partNamed(content, params.scheme, params.part);
  if (!named) error(404);
  const { scheme, part } = named;
  const key = { company, scheme: scheme.id, part: part.id };
  const { items, ...numbers } = await numbersOf(db, content, key, part);
  const retired = new Set((await retiredIn(db, company)).map(({ item }) => item));
  const texts = questionTexts(content);
  return {
    scheme: { id: scheme.id, title: scheme.title },
    part: {
      id: part.id,
      title: part.title,
      isWritten: part.kind === 'written',
      passMark: approximate(part.passMark.value),
    },
    numbers,
    questions: items.map((item) => lineOf(item, texts, retired)),
  };
};
