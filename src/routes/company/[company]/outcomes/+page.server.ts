import { fail } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { textOf } from '#server/access/text-of.ts';
import { currentContent } from '#server/current-content.ts';
import { appeal } from '#server/decisions/appeals.ts';
import { outcomesFor } from '#server/decisions/outcomes.ts';
import { freshId } from '#server/fresh-id.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals }) => {
  const { db, act } = within(locals);
  return { outcomes: await outcomesFor(db, act, await currentContent()), fresh: freshId() };
};

export const actions: Actions = {
  appeal: async ({ locals, request }) => {
    const { db, act } = within(locals);
    const form = await request.formData();
    const [id, ruling, because] = ['id', 'ruling', 'because'].map((name) => textOf(form, name));
    const given = { id: id!, ruling: ruling!, because: because! };
    const made = await appeal(db, act, await currentContent(), given);
    if (made.ok) return { done: true };
    return fail(400, { ruling: given.ruling, because: given.because, faults: made.error });
  },
};
