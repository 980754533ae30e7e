import { error, redirect } from '@sveltejs/kit';
import { memberships } from '#server/people/member.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals: { desk, session } }) => {
  if (!desk || !session) error(404);
  const companies = await memberships(desk.database.db, session.login);
  const [only, ...others] = companies;
  if (only && others.length === 0) redirect(303, `/company/${only.company}`);
  return { companies };
};
