import { fail, type RequestEvent } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { may } from '#server/access/rights.ts';
import { textOf } from '#server/access/text-of.ts';
import * as crewList from '#server/people/crew-list.ts';
import * as crews from '#server/people/crews.ts';
import type { Actions, PageServerLoad } from './$types';

/** Closed crews that are listed below those at work. */
const closedShown = 20;

export const load: PageServerLoad = async ({ locals, url }) => {
  const { db, act } = within(locals);
  const { company, roles } = act.by;
  const of = (name: string) => url.searchParams.get(name) ?? undefined;
  const which = of('which') === 'closed' ? ('closed' as const) : ('at work' as const);
  const asked = { search: of('search') ?? '', which };
  const mayChange = may(roles, 'change crews');
  const [after, before] = [of('after'), of('before')];
  // Where a form cannot list all crews, each is changed on a page of its own.
  const alone = await crewList.one(db, company, of('crew') ?? '');
  // Where all fit on a page, those closed stand below those at work.
  const page: crewList.CrewPage = alone
    ? { crews: [alone] }
    : await crewList.page(db, company, { ...asked, after, before });
  const isWhole = !alone && page.next === undefined && page.previous === undefined;
  const closed = await crewList.page(db, company, { which: 'closed', most: closedShown });
  return {
    asked,
    page,
    isAlone: alone !== undefined,
    to: of('to') ?? null,
    isWhole,
    closed: which === 'closed' || alone ? [] : closed.crews,
    isMoreClosed: closed.next !== undefined,
    pageLength: crewList.pageLength,
    choices: await crewList.forForm(db, company, url.searchParams, [of('to') ?? '']),
    mayChange,
    mayBoard: may(roles, 'see the board'),
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
