/** What the server itself keeps: its trail, its limits, its secrets, and tokens of other programs. */
import type { Day, Instant, Json } from './column.ts';

export type OperationTables = {
  audit_entry: AuditEntryTable;
  throttle: ThrottleTable;
  secret: SecretTable;
  api_token: ApiTokenTable;
};

/** A link of a company's audit trail; never changed. `hash` covers the others and the hash before it. */
type AuditEntryTable = {
  company_id: string;
  place: number;
  id: string;
  at: Instant;
  actor: string | null;
  action: string;
  subject: string;
  detail: Json;
  previous_hash: string;
  hash: string;
};

/** How often something was tried in a while, counted for all processes together. */
type ThrottleTable = { key: string; count: number; until: Instant };

type SecretTable = { name: string; value: string };

/**
 * What another program reads the records with. Only the digest of the token is kept; `scopes` are words with
 * single spaces between.
 */
type ApiTokenTable = {
  id: string;
  company_id: string;
  label: string;
  scopes: string;
  digest: string;
  made_by: string;
  made_at: Instant;
  expires_at: Instant;
  revoked_at: Instant | null;
  last_used_on: Day | null;
};
