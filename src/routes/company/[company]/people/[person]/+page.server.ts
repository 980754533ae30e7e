import { error, fail, type RequestEvent } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { may } from '#server/access/rights.ts';
import { textOf } from '#server/access/text-of.ts';
import * as cards from '#server/people/cards.ts';
import { forForm } from '#server/people/crew-list.ts';
import * as people from '#server/people/people.ts';
import type { PersonFault } from '#server/people/person-form.ts';
import * as roll from '#server/people/roll.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals, params, url }) => {
  const { db, act } = within(locals);
  const { company, roles } = act.by;
  const person = await roll.one(db, company, params.person);
  if (!person) error(404);
  const crew = url.searchParams.get('crew') ?? person.crew ?? '';
  return {
    person,
    crew,
    crews: await forForm(db, company, url.searchParams, [crew]),
    cardUntil: await cards.openUntil(db, company, person.id, act.at),
    mayChange: may(roles, 'change people'),
    mayMakeCards: may(roles, 'make crew cards'),
    mayInvite: cards.mayInvite(roles, person.roles),
  };
};

type Done = { readonly ok: true } | { readonly ok: false; readonly error: PersonFault };
type Event = RequestEvent<{ company: string; person: string }>;

/** Does something by a form, and answers what was done or what stood in the way. */
const by =
  <Deed extends string>(
    deed: Deed,
    act: (to: ReturnType<typeof within>, person: string, form: FormData) => Promise<Done>,
  ) =>
  async ({ locals, params, request }: Event) => {
    const form = await request.formData();
    const done = await act(within(locals), params.person, form);
    if (done.ok) return { deed };
    const given = ['name', 'number', 'language', 'email'].map((name) => [name, textOf(form, name)]);
    return fail(400, {
      deed,
      fault: done.error,
      given: Object.fromEntries(given) as Record<string, string>,
    });
  };

export const actions = {
  change: by('change', ({ db, act }, person, form) => {
    const [name, number] = [textOf(form, 'name'), textOf(form, 'number')];
    const [language, email] = [textOf(form, 'language'), textOf(form, 'email')];
    return people.change(db, act, person, { name, number, language, email });
  }),
  roles: by('roles', ({ db, act }, person, form) =>
    people.changeRoles(db, act, person, form.getAll('roles').map(String)),
  ),
  move: by('move', ({ db, act }, person, form) =>
    people.move(db, act, person, textOf(form, 'crew') || null),
  ),
  leave: by('leave', ({ db, act }, person) => people.leave(db, act, person)),
  back: by('back', ({ db, act }, person) => people.comeBack(db, act, person)),
  revoke: by('revoke', async ({ db, act }, person) => {
    await cards.revoke(db, act, person);
    return { ok: true };
  }),
} satisfies Actions;
