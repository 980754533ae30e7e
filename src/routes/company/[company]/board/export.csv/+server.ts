import { within } from '#server/access/act.ts';
import { askedFrom } from '#server/board/asked-from.ts';
import { boardCsv } from '#server/board/board-csv.ts';
import { schemesNow } from '#server/board/qualifications.ts';
import { csvAnswer } from '#server/import/csv-file.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = async ({ locals, url }) => {
  const { db, act } = within(locals);
  const { asked } = askedFrom(url.searchParams);
  const schemes = await schemesNow();
  const text = await boardCsv(db, act.by.company, act.at, schemes, asked, locals.language);
  return csvAnswer(text, `board-${act.at.slice(0, 10)}.csv`);
};
