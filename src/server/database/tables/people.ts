/** Companies, their people, and how these come in. */
import type { Generated } from 'kysely';
import type { Instant } from './column.ts';

export type PeopleTables = {
  company: CompanyTable;
  crew: CrewTable;
  person: PersonTable;
  crew_card: CrewCardTable;
  login: LoginTable;
  session: SessionTable;
  sign_in_way: SignInWayTable;
};

/** A contractor. `audit_length` and `audit_hash` are the head of its audit trail. */
type CompanyTable = {
  id: string;
  name: string;
  is_demo: Generated<number>;
  created_at: Instant;
  audit_length: Generated<number>;
  audit_hash: Generated<string>;
};

/** `folded_name` is what it is looked up and sorted by. */
type CrewTable = {
  id: string;
  company_id: string;
  name: string;
  folded_name: Generated<string>;
  created_at: Instant;
  closed_at: Instant | null;
};

/**
 * Somebody as one company knows them; `login_id` once they sign in. `roles` are words with single spaces
 * between. `search` is the name and number folded for looking up. `email` is where the office reaches
 * them, and nothing they sign in with. An erased person keeps only the id.
 */
export type PersonTable = {
  id: string;
  company_id: string;
  crew_id: string | null;
  login_id: string | null;
  name: string;
  number: string | null;
  roles: string;
  language: string | null;
  email: string | null;
  search: string;
  created_at: Instant;
  left_at: Instant | null;
  erased_at: Instant | null;
};

/** An invitation; only the digest of its secret is kept. */
type CrewCardTable = {
  id: string;
  company_id: string;
  person_id: string;
  digest: string;
  made_by: string;
  made_at: Instant;
  expires_at: Instant;
  used_at: Instant | null;
  revoked_at: Instant | null;
};

/** Of the tables the sign-in library writes, those that are read here. */
type LoginTable = {
  id: string;
  name: string;
  email: string;
  username: string | null;
  createdAt: unknown;
};

type SessionTable = {
  id: string;
  token: string;
  userId: string;
  expiresAt: unknown;
  createdAt: unknown;
  updatedAt: unknown;
  ipAddress: string | null;
  userAgent: string | null;
};

type SignInWayTable = { id: string; userId: string };
