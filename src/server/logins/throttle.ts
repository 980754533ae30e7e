import { sql } from 'kysely';
import type { Db } from '../database/open-database.ts';

export type Limit = { readonly most: number; readonly seconds: number };

/**
 * Counts one more try under a key, in the database and so for all processes together. Returns the seconds
 * to wait where there were too many, 0 otherwise. A clock that was set back starts the while anew.
 */
export async function waitFor(
  db: Db,
  key: string,
  { most, seconds }: Limit,
  now: Date,
): Promise<number> {
  const at = now.toISOString();
  const until = new Date(now.getTime() + seconds * 1000).toISOString();
  const isOver = sql<boolean>`throttle.until <= ${at} or throttle.until > ${until}`;
  const row = await db
    .insertInto('throttle')
    .values({ key, count: 1, until })
    .onConflict((conflict) =>
      conflict.column('key').doUpdateSet({
        count: sql`case when ${isOver} then 1 else throttle.count + 1 end`,
        until: sql`case when ${isOver} then ${until} else throttle.until end`,
      }),
    )
    .returning(['count', 'until'])
    .executeTakeFirstOrThrow();
  if (row.count <= most) return 0;
  return Math.max(1, Math.ceil((Date.parse(row.until) - now.getTime()) / 1000));
}

/** Forgets the tries under a key, as when one of them was right. */
export const forget = async (db: Db, key: string): Promise<void> => {
  await db.deleteFrom('throttle').where('key', '=', key).execute();
};

/** Takes away what has run out. */
export const tidy = async (db: Db, now: Date): Promise<void> => {
  await db.deleteFrom('throttle').where('until', '<=', now.toISOString()).execute();
};
