import { within } from '#server/access/act.ts';
import { csvAnswer } from '#server/import/csv-file.ts';
import { exported } from '#server/people/roster/roster.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = async ({ locals }) => {
  const { db, act } = within(locals);
  const text = await exported(db, act.by.company, locals.language);
  return csvAnswer(text, `roster-${act.at.slice(0, 10)}.csv`);
};
