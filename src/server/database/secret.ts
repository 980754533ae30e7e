import { randomBytes } from 'node:crypto';
import type { Db } from './open-database.ts';

/** A secret that all processes on one database share: made by whoever first asks for it. */
export async function secret(db: Db, name: string): Promise<string> {
  const value = randomBytes(32).toString('base64url');
  await db
    .insertInto('secret')
    .values({ name, value })
    .onConflict((conflict) => conflict.column('name').doNothing())
    .execute();
  const kept = await db
    .selectFrom('secret')
    .select('value')
    .where('name', '=', name)
    .executeTakeFirstOrThrow();
  return kept.value;
}
