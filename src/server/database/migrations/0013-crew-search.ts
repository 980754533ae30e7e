import { type Kysely, sql } from 'kysely';
import { folded } from '../../people/folded.ts';

/** Crews by their name folded, so that a company with thousands of them is read a page at a time. */
const statements = [
  `alter table crew add column folded_name text not null default ''`,
  `create index crew_at_work on crew (company_id, folded_name, id) where closed_at is null`,
  `create index crew_closed on crew (company_id, folded_name, id) where closed_at is not null`,
];

export async function crewSearch(db: Kysely<unknown>): Promise<void> {
  for (const statement of statements) await sql.raw(statement).execute(db);
  const { rows } = await sql<{ id: string; name: string }>`select id, name from crew`.execute(db);
  for (const { id, name } of rows) {
    await sql`update crew set folded_name = ${folded(name)} where id = ${id}`.execute(db);
  }
}
