import { fail } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import * as cards from '#server/people/cards.ts';
import { forForm } from '#server/people/crew-list.ts';
import { qrOf } from '#server/people/qr.ts';
import * as roll from '#server/people/roll.ts';
import type { Actions, PageServerLoad } from './$types';

/** As many as anybody prints at once. */
const most = 300;

export const load: PageServerLoad = async ({ locals, url }) => {
  const { db, act } = within(locals);
  const { company, roles } = act.by;
  const crew = url.searchParams.get('crew') ?? '';
  const named = url.searchParams.getAll('person').slice(0, most);
  const inCrew = crew ? (await roll.page(db, company, { crew, most })).people : [];
  const each = await Promise.all(named.map((person) => roll.one(db, company, person)));
  const people = [...inCrew, ...each]
    .filter((person) => person !== undefined)
    .filter(({ leftAt, roles: held }) => leftAt === null && cards.mayInvite(roles, held))
    .map(({ id, name, number, canSignIn }) => ({ id, name, number, canSignIn }));
  const crews = await forForm(db, company, url.searchParams);
  return { people, crew, crews, isNamed: named.length > 0 };
};

export const actions: Actions = {
  make: async ({ locals, request, url }) => {
    const { db, act } = within(locals);
    const people = (await request.formData()).getAll('person').map(String).slice(0, most);
    const made = await cards.make(db, act, people);
    if (made.length === 0) return fail(400, { isNone: true });
    return {
      cards: made.map(({ id, name, number, secret, expiresAt }) => {
        const address = `${url.origin}/card/${secret}`;
        return { id, name, number, expiresAt, address, qr: qrOf(address) };
      }),
    };
  },
};
