/** Certificates, what they are signed with, and those of others. */
import type { Generated } from 'kysely';
import type { Day, Instant, Json } from './column.ts';

export type CertificateTables = {
  certificate: CertificateTable;
  certificate_event: CertificateEventTable;
  certificate_issue: CertificateIssueTable;
  signing_key: SigningKeyTable;
  calendar_feed: CalendarFeedTable;
  declared_certificate: DeclaredCertificateTable;
};

/**
 * A certificate of a scheme: `state` is `in-force`, `suspended` or `withdrawn`; whether it is due or expired
 * is reckoned from `valid_until`. `replaced_by` is the one that renewed it. `public_id` stands in its
 * verification address; `name_shown` is what its holder lets be read there.
 */
type CertificateTable = {
  id: string;
  company_id: string;
  person_id: string;
  scheme: string;
  ruling_id: string | null;
  granted_on: Day;
  valid_until: Day;
  state: string;
  replaced_by: string | null;
  public_id: Generated<string>;
  name_shown: Generated<string>;
  made_at: Instant;
};

/** What happened to a certificate, and why; never changed. Nobody is named by whom the server was told. */
type CertificateEventTable = {
  id: string;
  company_id: string;
  certificate_id: string;
  kind: string;
  by_person_id: string | null;
  reason: string;
  at: Instant;
};

/**
 * What was put on paper and in the credential: the name then, what the scheme covered then (JSON), what
 * was examined (JSON). The last by `number` is the one that counts. It is signed when it is first asked
 * for. Those of an erased person are taken away.
 */
type CertificateIssueTable = {
  certificate_id: string;
  number: number;
  company_id: string;
  name: string;
  scope: Json;
  evidence: Json;
  credential: string | null;
  key_id: string | null;
  made_at: Instant;
};

/** What signatures are checked with, as a JWK; the private half is in no table. */
type SigningKeyTable = {
  id: string;
  public_key: Json;
  made_at: Instant;
  retired_at: Instant | null;
};

/** A secret address of a calendar, `about` being `own` or `company`; only the digest is kept. */
type CalendarFeedTable = {
  id: string;
  company_id: string;
  person_id: string;
  about: string;
  digest: string;
  made_at: Instant;
};

/**
 * A certificate that somebody else issued, declared and not verified; `scheme` is the qualification that it
 * comes nearest to. Those of an erased person are taken away.
 */
type DeclaredCertificateTable = {
  id: string;
  company_id: string;
  person_id: string;
  title: string;
  issuer: string;
  number: string | null;
  scheme: string | null;
  issued_on: Day;
  valid_until: Day | null;
  made_by: string;
  made_at: Instant;
  removed_by: string | null;
  removed_at: Instant | null;
  removed_because: string | null;
};
