import { type Kysely, sql } from 'kysely';
import type { Kind } from '../kind.ts';
import { appendOnly } from './append-only.ts';

/**
 * The life of a certificate. `public_id` is what stands in its verification address; `name_shown` is what
 * its holder lets strangers read there.
 */
const tables = [
  `alter table certificate add column public_id text not null default ''`,
  `alter table certificate add column name_shown text not null default 'initials'`,
  `create unique index certificate_public on certificate (public_id) where public_id <> ''`,
  `create index certificate_ending on certificate (company_id, state, valid_until)`,

  `create table certificate_event (
    id text primary key,
    company_id text not null references company (id),
    certificate_id text not null references certificate (id),
    kind text not null,
    by_person_id text,
    reason text not null,
    at text not null
  )`,
  `create index certificate_event_of on certificate_event (certificate_id, at)`,

  `create table certificate_issue (
    certificate_id text not null references certificate (id),
    number integer not null,
    company_id text not null references company (id),
    name text not null,
    scope text not null,
    evidence text not null,
    credential text,
    key_id text,
    made_at text not null,
    primary key (certificate_id, number)
  )`,

  `create table signing_key (
    id text primary key,
    public_key text not null,
    made_at text not null,
    retired_at text
  )`,

  `create table calendar_feed (
    id text primary key,
    company_id text not null references company (id),
    person_id text not null references person (id),
    about text not null,
    digest text not null,
    made_at text not null
  )`,
  `create unique index calendar_feed_secret on calendar_feed (digest)`,
  `create unique index calendar_feed_of on calendar_feed (person_id, about)`,
];

export async function certificates(db: Kysely<unknown>, kind: Kind): Promise<void> {
  for (const statement of tables) await sql.raw(statement).execute(db);
  await appendOnly(db, kind, 'certificate_event', 'old.company_id');
}
