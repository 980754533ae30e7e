import { within } from '#server/access/act.ts';
import { schemesNow } from '#server/board/qualifications.ts';
import { exported } from '#server/declared/file/declared-file.ts';
import { csvAnswer } from '#server/import/csv-file.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = async ({ locals }) => {
  const { db, act } = within(locals);
  const text = await exported(db, act.by.company, await schemesNow(), locals.language);
  return csvAnswer(text, `declared-${act.at.slice(0, 10)}.csv`);
};
