import { type Kysely, sql } from 'kysely';
import type { Kind } from '../kind.ts';
import { appendOnly } from './append-only.ts';

/** What leads to a certificate: applications, results of parts, rulings, appeals, and the certificate. */
const tables = [
  `create table application (
    id text primary key,
    company_id text not null references company (id),
    person_id text not null references person (id),
    scheme text not null,
    renews text,
    made_by text not null references person (id),
    made_at text not null,
    closed_at text
  )`,
  `create index application_of on application (company_id, closed_at, made_at)`,
  `create index application_of_person on application (person_id, scheme)`,

  `create table involvement (
    company_id text not null references company (id),
    candidate_id text not null references person (id),
    person_id text not null references person (id),
    role text not null,
    on_date text not null,
    primary key (candidate_id, person_id, role, on_date)
  )`,

  `create table part_result (
    id text primary key,
    application_id text not null references application (id),
    company_id text not null references company (id),
    person_id text not null references person (id),
    scheme text not null,
    part text not null,
    on_date text not null,
    result text not null,
    share double precision,
    examiners text not null,
    agreement text,
    detail text not null,
    content_revision text not null,
    made_at text not null,
    released_at text
  )`,
  `create index part_result_of on part_result (person_id, scheme, part)`,
  `create index part_result_in on part_result (company_id, scheme, part, on_date)`,

  `create table item_response (
    sitting_id text not null,
    item text not null,
    company_id text not null references company (id),
    person_id text not null references person (id),
    scheme text not null,
    part text not null,
    topic text not null,
    on_date text not null,
    was_answered integer not null,
    is_right integer not null,
    primary key (sitting_id, item)
  )`,
  `create index item_response_in on item_response (company_id, scheme, part, item)`,

  `create table retired_item (
    company_id text not null references company (id),
    item text not null,
    by_person_id text not null references person (id),
    because text not null,
    at text not null,
    primary key (company_id, item)
  )`,

  `create table ruling (
    id text primary key,
    company_id text not null references company (id),
    application_id text not null references application (id),
    appeal_id text,
    verdict text not null,
    by_person_id text not null references person (id),
    on_date text not null,
    because text not null,
    asks text not null,
    evidence text not null,
    until text,
    made_at text not null
  )`,
  `create index ruling_on on ruling (application_id, made_at)`,

  `create table appeal (
    id text primary key,
    company_id text not null references company (id),
    ruling_id text not null references ruling (id),
    by_person_id text not null references person (id),
    on_date text not null,
    because text not null,
    made_at text not null
  )`,
  `create index appeal_against on appeal (ruling_id)`,

  `create table certificate (
    id text primary key,
    company_id text not null references company (id),
    person_id text not null references person (id),
    scheme text not null,
    ruling_id text references ruling (id),
    granted_on text not null,
    valid_until text not null,
    state text not null,
    replaced_by text,
    made_at text not null
  )`,
  `create index certificate_of on certificate (person_id, scheme, valid_until)`,
  `create index certificate_in on certificate (company_id, scheme, valid_until)`,
];

/** What is never changed, each with the company of a row. */
const lasting = ['involvement', 'item_response', 'ruling', 'appeal'];

export async function certification(db: Kysely<unknown>, kind: Kind): Promise<void> {
  for (const statement of tables) await sql.raw(statement).execute(db);
  for (const table of lasting) await appendOnly(db, kind, table, 'old.company_id');
}
