import type { Db } from '../database/open-database.ts';

/** The parts of which the last decision asked for more, and which nobody took since. */
export async function askedAgain(db: Db, application: string): Promise<readonly string[]> {
  const last = await db
    .selectFrom('ruling')
    .select(['verdict', 'asks', 'made_at'])
    .where('application_id', '=', application)
    .orderBy('made_at', 'desc')
    .orderBy('id', 'desc')
    .limit(1)
    .executeTakeFirst();
  if (last?.verdict !== 'ask-for-more') return [];
  const since = await db
    .selectFrom('part_result')
    .select('part')
    .where('application_id', '=', application)
    .where('made_at', '>', last.made_at)
    .where('released_at', 'is not', null)
    .where('result', '!=', 'void')
    .execute();
  const taken = new Set(since.map(({ part }) => part));
  return (JSON.parse(last.asks) as readonly string[]).filter((part) => !taken.has(part));
}
