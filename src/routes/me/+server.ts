import { json } from '@sveltejs/kit';
import { desk } from '#server/desk.ts';
import { sessionCookie, sessionFrom } from '#server/logins/session.ts';
import { memberships } from '#server/people/member.ts';
import type { RequestHandler } from './$types';

/** Who is signed in, for pages that are kept on the device and cannot know. */
export const GET: RequestHandler = async ({ cookies, locals }) => {
  const cookie = cookies.get(sessionCookie);
  const headers = { 'cache-control': 'private, no-store' };
  if (cookie === undefined) return json({ name: null, companies: [] }, { headers });
  const { database, sessionKey } = await desk();
  const session = await sessionFrom(database.db, cookie, sessionKey, new Date(locals.at));
  const companies = session ? await memberships(database.db, session.login) : [];
  return json({ name: session?.name ?? null, companies }, { headers });
};
