import { error, fail, redirect } from '@sveltejs/kit';
import { textOf } from '#server/access/text-of.ts';
import { longestPassword, shortestPassword } from '#server/logins/auth.ts';
import { dropCookie } from '#server/logins/keep-cookie.ts';
import { changePassword, end, endOthers, hasEmail, sessions } from '#server/logins/logins.ts';
import { memberships } from '#server/people/member.ts';
import type { Actions, PageServerLoad } from './$types';

const signedIn = ({ desk, session }: App.Locals) => {
  if (!desk || !session) error(404);
  return { auth: desk.auth, db: desk.database.db, session };
};

export const load: PageServerLoad = async ({ locals }) => {
  const { db, session } = signedIn(locals);
  const { name, email, username } = await db
    .selectFrom('login')
    .select(['name', 'email', 'username'])
    .where('id', '=', session.login)
    .executeTakeFirstOrThrow();
  const listed = await sessions(db, session.login);
  return {
    login: { name, username, email: hasEmail(email) ? email : null },
    companies: await memberships(db, session.login),
    sessions: listed.map((one) => ({ ...one, isThis: one.id === session.id })),
  };
};

export const actions: Actions = {
  password: async ({ locals, request }) => {
    const { auth, db, session } = signedIn(locals);
    const form = await request.formData();
    const [present, next] = [textOf(form, 'present'), textOf(form, 'next')];
    if (next.length < shortestPassword || next.length > longestPassword) {
      return fail(400, { fault: 'SHORT' as const });
    }
    const changed = await changePassword(auth, session.login, { present, next });
    if (!changed.ok) return fail(400, { fault: changed.error });
    await endOthers(db, session.login, session.id);
    return { changed: true };
  },

  end: async ({ locals, request }) => {
    const { db, session } = signedIn(locals);
    const form = await request.formData();
    await end(db, session.login, textOf(form, 'session'));
  },

  out: async (event) => {
    const { db, session } = signedIn(event.locals);
    await end(db, session.login, session.id);
    dropCookie(event);
    redirect(303, '/');
  },
};
