/** Whether records are whole: what a backup, a restore and the checks of a server go by. */
import { sql } from 'kysely';
import { type Verification, verify } from '../audit/audit-trail.ts';
import { type Database, type Db, unknownMigrations } from '../database/open-database.ts';

/** The audit trail of every company, read whole. */
export async function trails(db: Db): Promise<readonly Verification[]> {
  const companies = await db.selectFrom('company').select('id').orderBy('id').execute();
  const found: Verification[] = [];
  for (const { id } of companies) found.push(await verify(db, id));
  return found;
}

/** What SQLite says of its own pages; empty where all is well. */
export async function pageFaults({ db, kind }: Database): Promise<readonly string[]> {
  if (kind !== 'sqlite') return [];
  const { rows } = await sql<{ integrity_check: string }>`pragma integrity_check(20)`.execute(db);
  return rows.map((row) => row.integrity_check).filter((said) => said !== 'ok');
}

/** Rows that point at rows that are not there, by table. PostgreSQL lets none come about. */
export async function referenceFaults({ db, kind }: Database): Promise<readonly string[]> {
  if (kind !== 'sqlite') return [];
  const { rows } = await sql<{ table: string; parent: string; rows: number }>`
    select "table", parent, count(*) as rows from pragma_foreign_key_check group by 1, 2`.execute(
    db,
  );
  return rows.map(({ table, parent, rows: count }) => `${table}: ${count} without their ${parent}`);
}

export const trailFaults = (found: readonly Verification[]): readonly string[] =>
  found.flatMap(({ company, faults }) =>
    faults.map(({ place, what }) => `audit trail of ${company}, entry ${place}: ${what}`),
  );

export type RecordsCheck = {
  readonly trails: readonly Verification[];
  readonly faults: readonly string[];
};

/** Reads the records through. Throws where they are no records of this app at all. */
export async function checkRecords(database: Database): Promise<RecordsCheck> {
  const newer = await unknownMigrations(database);
  if (newer.length > 0) {
    const what = `They were made by a newer version of the app (${newer.join(', ')}).`;
    return { trails: [], faults: [what] };
  }
  const pages = await pageFaults(database);
  // Pages that cannot be read say nothing that can be trusted.
  if (pages.length > 0) return { trails: [], faults: pages };
  const found = await trails(database.db);
  return { trails: found, faults: [...(await referenceFaults(database)), ...trailFaults(found)] };
}
