import { fail, redirect } from '@sveltejs/kit';
import { textOf } from '#server/access/text-of.ts';
import { desk } from '#server/desk.ts';
import { isAny } from '#server/companies/companies.ts';
import { keepCookie } from '#server/logins/keep-cookie.ts';
import { signIn } from '#server/logins/logins.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async () => {
  const { database } = await desk();
  if (!(await isAny(database.db))) redirect(303, '/start');
};

/** Only ever a page of our own. */
const inside = (to: string | null): string => (to && /^\/(?![/\\])/.test(to) ? to : '/company');

export const actions: Actions = {
  default: async (event) => {
    const { database, auth } = await desk();
    const form = await event.request.formData();
    const name = textOf(form, 'name');
    const outcome = await signIn(
      { auth, db: database.db },
      { name, password: textOf(form, 'password') },
      { address: event.getClientAddress(), agent: event.request.headers.get('user-agent') ?? '' },
      new Date(event.locals.at),
    );
    if (!outcome.ok) {
      return fail(outcome.error.code === 'TOO_OFTEN' ? 429 : 400, { fault: outcome.error, name });
    }
    keepCookie(event, outcome.value);
    redirect(303, inside(event.url.searchParams.get('to')));
  },
};
