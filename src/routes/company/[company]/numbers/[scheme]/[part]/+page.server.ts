import { error, fail, redirect } from '@sveltejs/kit';
import { approximate } from '#engine/measure/rational.ts';
import { within } from '#server/access/act.ts';
import { may } from '#server/access/rights.ts';
import { currentContent } from '#server/current-content.ts';
import { formsDrawn } from '#server/numbers/forms-drawn.ts';
import { numbersOf } from '#server/numbers/numbers.ts';
import { open, panelsOf } from '#server/numbers/panels.ts';
import { partNamed } from '#server/numbers/part-numbers.ts';
import { lineOf, questionTexts } from '#server/numbers/question-lines.ts';
import { retiredIn } from '#server/numbers/retire.ts';
import type { Actions, PageServerLoad } from './$types';

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
    drawn: part.kind === 'written' ? await formsDrawn(db, key) : undefined,
    panels: part.kind === 'written' ? await panelsOf(db, key) : [],
    mayLead: may(act.by.roles, 'change the question bank'),
    questions: items.map((item) => lineOf(item, texts, retired)),
  };
};

export const actions: Actions = {
  panel: async ({ locals, params }) => {
    const { db, act } = within(locals);
    const opened = await open(db, act, await currentContent(), params);
    if (opened.ok) redirect(303, `/company/${params.company}/numbers/panels/${opened.value}`);
    if (opened.error === 'ABSENT') error(404);
    return fail(400, { isUndrawn: true });
  },
};
