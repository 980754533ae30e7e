import { type Kysely, sql } from 'kysely';

/** Jobs that people are sent to, and the orders in which the board is walked. */
const statements = [
  `create table job (
    id text primary key,
    company_id text not null references company (id),
    title text not null,
    place text not null,
    starts_on text not null,
    ends_on text not null,
    note text,
    made_by text not null references person (id),
    made_at text not null,
    closed_at text
  )`,
  `create index job_of on job (company_id, closed_at, ends_on)`,

  `create table job_role (
    id text primary key,
    job_id text not null references job (id),
    place integer not null,
    title text not null,
    count integer not null,
    needs text not null
  )`,
  `create index job_role_of on job_role (job_id, place)`,

  `create table job_travel (
    job_id text not null references job (id),
    crew_id text not null references crew (id),
    distance integer not null,
    primary key (job_id, crew_id)
  )`,

  `create table job_person (
    job_id text not null references job (id),
    role_id text not null references job_role (id),
    person_id text not null references person (id),
    sent_by text not null references person (id),
    sent_at text not null,
    primary key (job_id, person_id)
  )`,
  `create index job_person_of on job_person (person_id)`,

  `create index certificate_by_state on certificate (company_id, scheme, state, valid_until)`,
  `create index crew_by_name on crew (company_id, name, id)`,
  `drop index crew_of`,
];

export async function jobs(db: Kysely<unknown>): Promise<void> {
  for (const statement of statements) await sql.raw(statement).execute(db);
}
