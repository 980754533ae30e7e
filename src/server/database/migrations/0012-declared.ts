import { type Kysely, sql } from 'kysely';

/** Certificates that others issued, as somebody showed them to the office: kept apart from one's own. */
const statements = [
  `create table declared_certificate (
    id text primary key,
    company_id text not null references company (id),
    person_id text not null references person (id),
    title text not null,
    issuer text not null,
    number text,
    scheme text,
    issued_on text not null,
    valid_until text,
    made_by text not null references person (id),
    made_at text not null,
    removed_by text references person (id),
    removed_at text,
    removed_because text
  )`,
  `create index declared_of on declared_certificate (person_id, removed_at)`,
  `create index declared_in on declared_certificate (company_id)`,
];

export async function declared(db: Kysely<unknown>): Promise<void> {
  for (const statement of statements) await sql.raw(statement).execute(db);
}
