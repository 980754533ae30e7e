import { within } from '#server/access/act.ts';
import { exported } from '#server/people/roster/roster.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = async ({ locals }) => {
  const { db, act } = within(locals);
  const name = `roster-${act.at.slice(0, 10)}.csv`;
  return new Response(await exported(db, act.by.company, locals.language), {
    headers: {
      'content-type': 'text/csv; charset=utf-8',
      'content-disposition': `attachment; filename="${name}"`,
    },
  });
};
