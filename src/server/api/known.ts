import { fault, ok, type Result } from '#engine/result.ts';
import type { Db } from '../database/open-database.ts';
import type { Problem } from './problem.ts';

/** That a list can go on after somebody: a list that began anew unasked would never end. */
export async function knownPerson(
  db: Db,
  company: string,
  person: string | undefined,
): Promise<Result<true, Problem>> {
  if (person === undefined) return ok(true);
  const row = await db
    .selectFrom('person')
    .select('id')
    .where('company_id', '=', company)
    .where('id', '=', person)
    .where('erased_at', 'is', null)
    .executeTakeFirst();
  return row ? ok(true) : fault({ code: 'CURSOR_UNKNOWN' });
}
