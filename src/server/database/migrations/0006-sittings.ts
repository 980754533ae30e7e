import { type Kysely, sql } from 'kysely';
import type { Kind } from '../kind.ts';
import { appendOnly } from './append-only.ts';

/** Sittings of examinations: the plan of each, what happened in it, and how often a question was drawn. */
const tables = [
  `create table sitting (
    id text primary key,
    company_id text not null references company (id),
    application_id text not null references application (id),
    person_id text not null references person (id),
    scheme text not null,
    part text not null,
    kind text not null,
    plan text not null,
    content_revision text not null,
    code_digest text,
    code_by text references person (id),
    phase text not null,
    made_by text not null references person (id),
    made_at text not null
  )`,
  `create index sitting_of_application on sitting (application_id, made_at)`,
  `create index sitting_of_person on sitting (person_id, scheme, part)`,
  `create index sitting_in on sitting (company_id, scheme, part)`,
  `create index sitting_under_way on sitting (company_id, phase, made_at)`,

  `create table sitting_event (
    sitting_id text not null references sitting (id),
    place integer not null,
    company_id text not null references company (id),
    kind text not null,
    at text not null,
    answer_id text,
    detail text not null,
    primary key (sitting_id, place)
  )`,
  `create unique index sitting_answer on sitting_event (sitting_id, answer_id)`,

  `create table item_use (
    company_id text not null references company (id),
    scheme text not null,
    part text not null,
    item text not null,
    forms integer not null,
    primary key (company_id, scheme, part, item)
  )`,
];

export async function sittings(db: Kysely<unknown>, kind: Kind): Promise<void> {
  for (const statement of tables) await sql.raw(statement).execute(db);
  await appendOnly(db, kind, 'sitting_event', 'old.company_id');
}
