import { fail, redirect } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { may } from '#server/access/rights.ts';
import { textOf } from '#server/access/text-of.ts';
import { forForm } from '#server/people/crew-list.ts';
import * as people from '#server/people/people.ts';
import type { GivenPerson } from '#server/people/person-form.ts';
import * as roll from '#server/people/roll.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals, url }) => {
  const { db, act } = within(locals);
  const { company, roles } = act.by;
  const of = (name: string) => url.searchParams.get(name) ?? '';
  const asked = {
    search: of('search'),
    crew: of('crew'),
    who: of('who') === 'gone' ? ('gone' as const) : ('here' as const),
  };
  const [after, before] = [of('after') || undefined, of('before') || undefined];
  return {
    asked,
    ...(await roll.page(db, company, { ...asked, after, before })),
    count: await roll.count(db, company),
    pageLength: roll.pageLength,
    crews: await forForm(db, company, url.searchParams, [asked.crew]),
    mayChange: may(roles, 'change people'),
  };
};

const givenIn = (form: FormData) => ({
  name: textOf(form, 'name'),
  number: textOf(form, 'number'),
  language: textOf(form, 'language'),
  email: textOf(form, 'email'),
  crew: textOf(form, 'crew'),
  roles: form.getAll('roles').map(String),
});

/** What was entered, with the crews that can be chosen: the one that was is always among them. */
async function again(locals: App.Locals, form: FormData) {
  const { db, act } = within(locals);
  const given = givenIn(form);
  return { given, crews: await forForm(db, act.by.company, form, [given.crew]) };
}

export const actions: Actions = {
  find: async ({ locals, request }) => again(locals, await request.formData()),

  create: async ({ locals, request }) => {
    const { db, act } = within(locals);
    const form = await request.formData();
    const { roles, ...given } = givenIn(form);
    const made = await people.create(db, act, { ...given, roles: roles as GivenPerson['roles'] });
    if (!made.ok) return fail(400, { fault: made.error, ...(await again(locals, form)) });
    redirect(303, `/company/${act.by.company}/people/${made.value}`);
  },
};
