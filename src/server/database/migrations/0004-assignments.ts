import { type Kysely, sql } from 'kysely';

/** Who is stuck with a piece of work, and how many tries were given on top. */
export async function assignments(db: Kysely<unknown>): Promise<void> {
  const statements = [
    `alter table progress add column missed integer not null default 0`,
    `alter table progress add column extra integer not null default 0`,
    `create index assignment_by_time on assignment (company_id, made_at, id)`,
    `drop index assignment_of`,
    `create index progress_of_person on progress (person_id)`,
  ];
  for (const statement of statements) await sql.raw(statement).execute(db);
}
