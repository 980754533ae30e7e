import { error, fail } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { may } from '#server/access/rights.ts';
import { textOf } from '#server/access/text-of.ts';
import { currentContent } from '#server/current-content.ts';
import { bankName } from '#server/exams/bank-name.ts';
import { numbersOf } from '#server/numbers/numbers.ts';
import { partNamed } from '#server/numbers/part-numbers.ts';
import { lineOf, questionTexts } from '#server/numbers/question-lines.ts';
import { retire, retiredIn, takeBack } from '#server/numbers/retire.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals, params }) => {
  const { db, act } = within(locals);
  const { company, roles } = act.by;
  const content = await currentContent();
  const named = partNamed(content, params.scheme, params.part);
  if (!named) error(404);
  const { scheme, part } = named;
  const key = { company, scheme: scheme.id, part: part.id };
  const { items } = await numbersOf(db, content, key, part);
  const item = items.find(({ id }) => id === params.question);
  if (!item) error(404);
  const retired = (await retiredIn(db, company)).find((one) => one.item === bankName(item.id));
  const { curve, ownCurve } = item;
  const line = lineOf(item, questionTexts(content), new Set(retired ? [retired.item] : []));
  return {
    scheme: { id: scheme.id, title: scheme.title },
    part: { id: part.id, title: part.title },
    question: { ...line, curve, ownCurve },
    retired,
    mayChange: may(roles, 'change the question bank'),
  };
};

export const actions: Actions = {
  retire: async ({ locals, params, request }) => {
    const { db, act } = within(locals);
    const because = textOf(await request.formData(), 'because');
    const content = await currentContent();
    const done = await retire(db, act, content, { item: bankName(params.question), because });
    if (done.ok) return { because: '' };
    if (done.error === 'ABSENT') error(404);
    return fail(400, { because });
  },
  back: async ({ locals, params }) => {
    const { db, act } = within(locals);
    const done = await takeBack(db, act, bankName(params.question));
    if (!done.ok) error(404);
    return { because: '' };
  },
};
