import { fail, type RequestEvent } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { may } from '#server/access/rights.ts';
import { textOf } from '#server/access/text-of.ts';
import * as crews from '#server/people/crews.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals }) => {
  const { db, act } = within(locals);
  const { company, roles } = act.by;
  return {
    crews: await crews.list(db, company),
    mayChange: may(roles, 'change crews'),
    mayInvite: may(roles, 'make crew cards'),
  };
};

/** What is done by a form; where something stood in the way, what was entered comes back with it. */
const by =
  (act: (to: ReturnType<typeof within>, crew: string, form: FormData) => Promise<Done>) =>
  async ({ locals, request }: RequestEvent) => {
    const form = await request.formData();
    const crew = textOf(form, 'crew');
    const done = await act(within(locals), crew, form);
    if (done.ok) return { done: true };
    return fail(400, { fault: done.error, crew, given: textOf(form, 'name') });
  };

type Done = { readonly ok: true } | { readonly ok: false; readonly error: crews.CrewFault };

export const actions = {
  create: by(({ db, act }, _, form) => crews.create(db, act, { name: textOf(form, 'name') })),
  rename: by(({ db, act }, crew, form) =>
    crews.rename(db, act, crew, { name: textOf(form, 'name') }),
  ),
  close: by(({ db, act }, crew, form) => crews.close(db, act, crew, textOf(form, 'to') || null)),
  reopen: by(({ db, act }, crew) => crews.reopen(db, act, crew)),
} satisfies Actions;
