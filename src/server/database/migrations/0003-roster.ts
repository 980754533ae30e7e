import { type Kysely, sql } from 'kysely';

/** An address to reach somebody at, and lists of people in the order in which they are turned over. */
export async function roster(db: Kysely<unknown>): Promise<void> {
  const statements = [
    `alter table person add column email text`,
    `drop index person_by_name`,
    `create index person_here on person (company_id, search, id) where left_at is null`,
    `create index person_here_in_crew on person (company_id, crew_id, search, id)
       where left_at is null`,
    `create index person_gone on person (company_id, search, id) where left_at is not null`,
  ];
  for (const statement of statements) await sql.raw(statement).execute(db);
}
