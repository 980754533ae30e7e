import { type Kysely, sql } from 'kysely';
import type { Kind } from '../kind.ts';
import { appendOnly } from './append-only.ts';

/** Panels of judges who say where a pass mark should lie, and what each said in which round. */
const tables = [
  `create table panel (
    id text primary key,
    company_id text not null references company (id),
    scheme text not null,
    part text not null,
    items text not null,
    content_revision text not null,
    round integer not null,
    opened_by text not null references person (id),
    opened_at text not null,
    closed_at text
  )`,
  `create index panel_of on panel (company_id, scheme, part, opened_at)`,
  `create table panel_rating (
    id text primary key,
    company_id text not null references company (id),
    panel_id text not null references panel (id),
    judge_id text not null references person (id),
    round integer not null,
    ratings text not null,
    made_at text not null
  )`,
  `create index panel_rating_of on panel_rating (panel_id, round, made_at)`,
];

export async function panels(db: Kysely<unknown>, kind: Kind): Promise<void> {
  for (const statement of tables) await sql.raw(statement).execute(db);
  await appendOnly(db, kind, 'panel_rating', 'old.company_id');
}
