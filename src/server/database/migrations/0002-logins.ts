import { type Kysely, sql } from 'kysely';
import type { Kind } from '../kind.ts';

/** The tables of the sign-in library, in the types and letters it writes. */
export async function logins(db: Kysely<unknown>, kind: Kind): Promise<void> {
  const instant = kind === 'sqlite' ? 'text' : 'timestamptz';
  const truth = kind === 'sqlite' ? 'integer' : 'boolean';
  const statements = [
    `create table login (
      "id" text primary key,
      "name" text not null,
      "email" text not null unique,
      "emailVerified" ${truth} not null,
      "image" text,
      "username" text unique,
      "displayUsername" text,
      "createdAt" ${instant} not null,
      "updatedAt" ${instant} not null
    )`,

    `create table session (
      "id" text primary key,
      "token" text not null unique,
      "userId" text not null references login ("id") on delete cascade,
      "expiresAt" ${instant} not null,
      "ipAddress" text,
      "userAgent" text,
      "createdAt" ${instant} not null,
      "updatedAt" ${instant} not null
    )`,
    `create index session_of on session ("userId")`,

    `create table sign_in_way (
      "id" text primary key,
      "accountId" text not null,
      "providerId" text not null,
      "userId" text not null references login ("id") on delete cascade,
      "accessToken" text,
      "refreshToken" text,
      "idToken" text,
      "accessTokenExpiresAt" ${instant},
      "refreshTokenExpiresAt" ${instant},
      "scope" text,
      "password" text,
      "createdAt" ${instant} not null,
      "updatedAt" ${instant} not null
    )`,
    `create index sign_in_way_of on sign_in_way ("userId")`,

    `create table verification (
      "id" text primary key,
      "identifier" text not null,
      "value" text not null,
      "expiresAt" ${instant} not null,
      "createdAt" ${instant},
      "updatedAt" ${instant}
    )`,
    `create index verification_of on verification ("identifier")`,
  ];
  for (const statement of statements) await sql.raw(statement).execute(db);
}
