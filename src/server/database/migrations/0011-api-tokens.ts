import { type Kysely, sql } from 'kysely';

/** Tokens by which other programs read a company's records, and the order in which attempts are read so. */
const statements = [
  `create table api_token (
    id text primary key,
    company_id text not null references company (id),
    label text not null,
    scopes text not null,
    digest text not null,
    made_by text not null references person (id),
    made_at text not null,
    expires_at text not null,
    revoked_at text,
    last_used_on text
  )`,
  `create unique index api_token_secret on api_token (digest)`,
  `create index api_token_of on api_token (company_id, made_at)`,
  `create index attempt_received on attempt (company_id, received_at, id)`,
];

export async function apiTokens(db: Kysely<unknown>): Promise<void> {
  for (const statement of statements) await sql.raw(statement).execute(db);
}
