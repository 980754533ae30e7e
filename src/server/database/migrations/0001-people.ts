import { type Kysely, sql } from 'kysely';
import type { Kind } from '../kind.ts';
import { appendOnly, demoForGood } from './append-only.ts';

/** Companies, crews, people, what they are given to do, and what came of it. */
const tables = [
  `create table company (
    id text primary key,
    name text not null,
    is_demo integer not null default 0,
    created_at text not null,
    audit_length integer not null default 0,
    audit_hash text not null default ''
  )`,

  `create table crew (
    id text primary key,
    company_id text not null references company (id),
    name text not null,
    created_at text not null,
    closed_at text
  )`,
  `create index crew_of on crew (company_id, name)`,

  `create table person (
    id text primary key,
    company_id text not null references company (id),
    crew_id text references crew (id),
    login_id text,
    name text not null,
    number text,
    roles text not null,
    language text,
    search text not null,
    created_at text not null,
    left_at text,
    erased_at text
  )`,
  `create index person_by_name on person (company_id, search)`,
  `create index person_of_crew on person (crew_id, search)`,
  `create unique index person_of_login on person (login_id, company_id)`,
  `create unique index person_by_number on person (company_id, number)`,

  `create table crew_card (
    id text primary key,
    company_id text not null references company (id),
    person_id text not null references person (id),
    digest text not null unique,
    made_by text not null,
    made_at text not null,
    expires_at text not null,
    used_at text,
    revoked_at text
  )`,
  `create index card_of_person on crew_card (person_id)`,

  `create table assignment (
    id text primary key,
    company_id text not null references company (id),
    title text not null,
    note text,
    made_by text not null,
    made_at text not null,
    opens_at text not null,
    due_at text,
    tries integer,
    withdrawn_at text
  )`,
  `create index assignment_of on assignment (company_id, made_at)`,

  `create table assignment_work (
    id text primary key,
    assignment_id text not null references assignment (id),
    place integer not null,
    kind text not null,
    subject text not null,
    pass integer not null,
    count integer not null
  )`,
  `create index work_of on assignment_work (assignment_id, place)`,

  `create table assignment_for (
    assignment_id text not null references assignment (id),
    crew_id text references crew (id),
    person_id text references person (id)
  )`,
  `create index for_of on assignment_for (assignment_id)`,
  `create index for_crew on assignment_for (crew_id)`,
  `create index for_person on assignment_for (person_id)`,

  `create table attempt (
    id text primary key,
    company_id text not null references company (id),
    person_id text not null references person (id),
    work_id text references assignment_work (id),
    kind text not null,
    about text not null,
    played text not null,
    finished_at text not null,
    received_at text not null,
    content_revision text not null,
    sheet_revision text
  )`,
  `create index attempt_of on attempt (person_id, received_at)`,

  `create table mark (
    attempt_id text not null references attempt (id),
    content_revision text not null,
    sheet_revision text,
    marked_at text not null,
    score double precision not null,
    outcome text not null,
    detail text not null,
    primary key (attempt_id, content_revision)
  )`,

  `create table standing (
    company_id text not null,
    person_id text not null references person (id),
    kind text not null,
    about text not null,
    attempts integer not null,
    best double precision not null,
    last_score double precision not null,
    last_at text not null,
    tally text not null,
    primary key (person_id, kind, about)
  )`,

  `create table progress (
    work_id text not null references assignment_work (id),
    person_id text not null references person (id),
    tries integer not null,
    good integer not null,
    best double precision not null,
    last_at text not null,
    passed_at text,
    asked_again_at text,
    primary key (work_id, person_id)
  )`,

  `create table decision (
    id text primary key,
    company_id text not null references company (id),
    attempt_id text not null references attempt (id),
    kind text not null,
    reason text not null,
    decided_by text not null references person (id),
    decided_at text not null
  )`,
  `create index decision_on on decision (attempt_id, decided_at)`,

  `create table audit_entry (
    company_id text not null references company (id),
    place integer not null,
    id text not null unique,
    at text not null,
    actor text,
    action text not null,
    subject text not null,
    detail text not null,
    previous_hash text not null,
    hash text not null,
    primary key (company_id, place)
  )`,
  `create index audit_about on audit_entry (company_id, subject)`,

  `create table throttle (key text primary key, count integer not null, until text not null)`,
  `create table secret (name text primary key, value text not null)`,
];

/** What is never changed, each with the company of a row. */
const lasting = {
  attempt: 'old.company_id',
  mark: '(select company_id from attempt where id = old.attempt_id)',
  decision: 'old.company_id',
  audit_entry: 'old.company_id',
};

export async function people(db: Kysely<unknown>, kind: Kind): Promise<void> {
  for (const statement of tables) await sql.raw(statement).execute(db);
  for (const [table, company] of Object.entries(lasting)) {
    await appendOnly(db, kind, table, company);
  }
  await demoForGood(db, kind);
}
