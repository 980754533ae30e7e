import { error, fail, type RequestEvent } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { may } from '#server/access/rights.ts';
import { currentContent } from '#server/current-content.ts';
import { moveOn, type PanelFault, panelFor, rate } from '#server/numbers/panels.ts';
import { ratingsFrom } from '#server/numbers/ratings-form.ts';
import { questionTexts } from '#server/numbers/question-lines.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals, params }) => {
  const { db, act } = within(locals);
  const content = await currentContent();
  const panel = await panelFor(db, content, act, params.panel);
  if (!panel) error(404);
  const texts = questionTexts(content);
  return {
    panel: {
      ...panel,
      items: panel.items.map((one) => ({ ...one, ask: texts.get(one.item)?.ask })),
    },
    mayLead: may(act.by.roles, 'change the question bank'),
  };
};

type Done = { readonly ok: true } | { readonly ok: false; readonly error: PanelFault };

const answered = (done: Done, given: Readonly<Record<string, string>> = {}) => {
  if (done.ok) return { done: true };
  if (done.error === 'ABSENT') error(404);
  return fail(400, { fault: done.error, given });
};

const to =
  (where: 'next round' | 'end') =>
  async ({ locals, params }: Pick<RequestEvent, 'locals'> & { params: { panel: string } }) => {
    const { db, act } = within(locals);
    return answered(await moveOn(db, act, params.panel, where));
  };

export const actions: Actions = {
  rate: async ({ locals, params, request }) => {
    const { db, act } = within(locals);
    const { ratings, given } = ratingsFrom(await request.formData());
    return answered(await rate(db, act, params.panel, ratings), given);
  },
  next: to('next round'),
  close: to('end'),
};
