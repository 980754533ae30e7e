/**
 * The tables, as Kysely reads them. Instants are ISO 8601 in UTC to the millisecond, so that their order
 * is that of the text; identifiers are UUIDs; JSON is text. Both kinds of database hold the same.
 */
import type { Generated, Selectable } from 'kysely';

type Instant = string;
type Json = string;
/** A day of the calendar, ISO 8601. */
type Day = string;

export type Tables = {
  company: CompanyTable;
  crew: CrewTable;
  person: PersonTable;
  crew_card: CrewCardTable;
  assignment: AssignmentTable;
  assignment_work: AssignmentWorkTable;
  assignment_for: AssignmentForTable;
  attempt: AttemptTable;
  mark: MarkTable;
  standing: StandingTable;
  progress: ProgressTable;
  decision: DecisionTable;
  application: ApplicationTable;
  involvement: InvolvementTable;
  part_result: PartResultTable;
  item_response: ItemResponseTable;
  retired_item: RetiredItemTable;
  panel: PanelTable;
  panel_rating: PanelRatingTable;
  ruling: RulingTable;
  appeal: AppealTable;
  certificate: CertificateTable;
  sitting: SittingTable;
  sitting_event: SittingEventTable;
  item_use: ItemUseTable;
  check_basis: CheckBasisTable;
  hands_on_check: HandsOnCheckTable;
  check_photo: CheckPhotoTable;
  certificate_event: CertificateEventTable;
  certificate_issue: CertificateIssueTable;
  signing_key: SigningKeyTable;
  calendar_feed: CalendarFeedTable;
  job: JobTable;
  job_role: JobRoleTable;
  job_travel: JobTravelTable;
  job_person: JobPersonTable;
  api_token: ApiTokenTable;
  declared_certificate: DeclaredCertificateTable;
  audit_entry: AuditEntryTable;
  throttle: ThrottleTable;
  secret: SecretTable;
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

type CrewTable = {
  id: string;
  company_id: string;
  name: string;
  created_at: Instant;
  closed_at: Instant | null;
};

/**
 * Somebody as one company knows them; `login_id` once they sign in. `roles` are words with single spaces
 * between. `search` is the name and number folded for looking up. `email` is where the office reaches
 * them, and nothing they sign in with. An erased person keeps only the id.
 */
type PersonTable = {
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

/** Work that a trainer gives. `tries` null means as many as one likes. */
type AssignmentTable = {
  id: string;
  company_id: string;
  title: string;
  note: string | null;
  made_by: string;
  made_at: Instant;
  opens_at: Instant;
  due_at: Instant | null;
  tries: number | null;
  withdrawn_at: Instant | null;
};

/**
 * A piece of it: `kind` says what `subject` (JSON) holds; it is passed with `count` tries that score `pass`
 * of 100 or more.
 */
type AssignmentWorkTable = {
  id: string;
  assignment_id: string;
  place: number;
  kind: string;
  subject: Json;
  pass: number;
  count: number;
};

/** Whom it is for: one of the two. */
type AssignmentForTable = {
  assignment_id: string;
  crew_id: string | null;
  person_id: string | null;
};

/**
 * Something tried, as it was played; never changed. `about` is the method or the family, `played` the JSON
 * that was sent, `finished_at` by the clock of the device it was played on.
 */
type AttemptTable = {
  id: string;
  company_id: string;
  person_id: string;
  work_id: string | null;
  kind: string;
  about: string;
  played: Json;
  finished_at: Instant;
  received_at: Instant;
  content_revision: string;
  sheet_revision: string | null;
};

/** How an attempt was marked with one revision of the content; never changed, but marked again. */
type MarkTable = {
  attempt_id: string;
  content_revision: string;
  sheet_revision: string | null;
  marked_at: Instant;
  score: number;
  outcome: string;
  detail: Json;
};

/**
 * What is known of one person in one method or family, made from the marks: kept so that no page has to
 * read every attempt, and made anew by a command.
 */
type StandingTable = {
  company_id: string;
  person_id: string;
  kind: string;
  about: string;
  attempts: number;
  best: number;
  last_score: number;
  last_at: Instant;
  tally: Json;
};

/** How far one person is with one piece of assigned work; made from the marks, like a standing. */
type ProgressTable = {
  work_id: string;
  person_id: string;
  tries: number;
  /** Of these, as good as the work asks. */
  good: number;
  best: number;
  last_at: Instant;
  passed_at: Instant | null;
  /** An attempt that is asked for again does not count as passed. */
  asked_again_at: Instant | null;
  /** Tries in a row, up to now, that were not as good as the work asks. */
  missed: Generated<number>;
  /** Tries on top of those that the assignment allows. */
  extra: Generated<number>;
};

/** What somebody with the right to it decided about an attempt, or said of it; never changed. */
type DecisionTable = {
  id: string;
  company_id: string;
  attempt_id: string;
  kind: string;
  reason: string;
  decided_by: string;
  decided_at: Instant;
};

/**
 * Somebody on the way to a certificate of a scheme; `renews` is the one that it goes on from. Closed by a
 * ruling that grants or refuses, or when it is taken back.
 */
type ApplicationTable = {
  id: string;
  company_id: string;
  person_id: string;
  scheme: string;
  renews: string | null;
  made_by: string;
  made_at: Instant;
  closed_at: Instant | null;
};

/** Who had what to do with a candidate, `role` being `trainer` or `examiner`; never changed. */
type InvolvementTable = {
  company_id: string;
  candidate_id: string;
  person_id: string;
  role: string;
  on_date: Day;
};

/**
 * What came of one part: its sitting or hands-on check, by its `id`. `result` is `passed`, `failed` or
 * `void`; `examiners` a JSON list of persons; `agreement` a fraction as text. It counts once it is released.
 */
type PartResultTable = {
  id: string;
  application_id: string;
  company_id: string;
  person_id: string;
  scheme: string;
  part: string;
  on_date: Day;
  result: string;
  share: number | null;
  examiners: Json;
  agreement: string | null;
  detail: Json;
  content_revision: string;
  made_at: Instant;
  released_at: Instant | null;
};

/** One question of one sitting as it was marked, for the statistics; never changed. */
type ItemResponseTable = {
  sitting_id: string;
  item: string;
  company_id: string;
  person_id: string;
  scheme: string;
  part: string;
  topic: string;
  on_date: Day;
  was_answered: number;
  is_right: number;
};

/** A question that a company asks no more. */
type RetiredItemTable = {
  company_id: string;
  item: string;
  by_person_id: string;
  because: string;
  at: Instant;
};

/**
 * Judges who say where the pass mark of a part should lie, on the `items` (a JSON list) of one form. Only
 * `round` and `closed_at` change.
 */
type PanelTable = {
  id: string;
  company_id: string;
  scheme: string;
  part: string;
  items: Json;
  content_revision: string;
  round: number;
  opened_by: string;
  opened_at: Instant;
  closed_at: Instant | null;
};

/** What a judge handed in for a round: per cent by item, as JSON; never changed. */
type PanelRatingTable = {
  id: string;
  company_id: string;
  panel_id: string;
  judge_id: string;
  round: number;
  ratings: Json;
  made_at: Instant;
};

/** A decision on an application, or on an appeal against one; never changed. */
type RulingTable = {
  id: string;
  company_id: string;
  application_id: string;
  appeal_id: string | null;
  verdict: string;
  by_person_id: string;
  on_date: Day;
  because: string;
  asks: Json;
  evidence: Json;
  until: Day | null;
  made_at: Instant;
};

type AppealTable = {
  id: string;
  company_id: string;
  ruling_id: string;
  by_person_id: string;
  on_date: Day;
  because: string;
  made_at: Instant;
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
 * One person's sitting of one part: `plan` says what is asked and for how long, `phase` is what its events
 * come to, kept so that lists need not read them. Only the digest of the start code is kept, and who made
 * it: it opens the sitting in their name.
 */
type SittingTable = {
  id: string;
  company_id: string;
  application_id: string;
  person_id: string;
  scheme: string;
  part: string;
  kind: string;
  plan: Json;
  content_revision: string;
  code_digest: string | null;
  code_by: string | null;
  phase: string;
  made_by: string;
  made_at: Instant;
};

/** What happened in a sitting, in its order from 1; never changed. `answer_id` was made on the device. */
type SittingEventTable = {
  sitting_id: string;
  place: number;
  company_id: string;
  kind: string;
  at: Instant;
  answer_id: string | null;
  detail: Json;
};

/** On how many forms of a part a question has been, in one company. */
type ItemUseTable = {
  company_id: string;
  scheme: string;
  part: string;
  item: string;
  forms: number;
};

/** What checks of a part are judged by with one revision of the content; never changed, and no company's own. */
type CheckBasisTable = {
  content_revision: string;
  scheme: string;
  part: string;
  bundle: string;
};

/**
 * What one examiner sees of a part that is done by hand. `taking_id` is the same for both where there are
 * two, `place` 1 or 2, and the result of the part goes by it. `filled` is the JSON of its sheet; once it is
 * signed nothing of it changes, `outcome` is `passed`, `failed` or `open`, and `detail` how it was judged.
 */
type HandsOnCheckTable = {
  id: string;
  company_id: string;
  application_id: string;
  person_id: string;
  scheme: string;
  part: string;
  taking_id: string;
  place: number;
  examiner_id: string;
  content_revision: string;
  begun_at: Instant;
  filled: Json;
  saved_at: Instant;
  signed_at: Instant | null;
  outcome: string | null;
  detail: Json | null;
};

/** `digest` is the SHA-256 of the bytes, in hex; `size` how many they are. */
type CheckPhotoTable = {
  id: string;
  check_id: string;
  company_id: string;
  type: string;
  bytes: Uint8Array;
  size: number;
  digest: string;
  kept_at: Instant;
};

/** Work somewhere that people are sent to; both days included. `closed_at` once nobody plans it any more. */
type JobTable = {
  id: string;
  company_id: string;
  title: string;
  place: string;
  starts_on: Day;
  ends_on: Day;
  note: string | null;
  made_by: string;
  made_at: Instant;
  closed_at: Instant | null;
};

/** So many people whom a job asks for; `needs` is a JSON list of schemes. */
type JobRoleTable = {
  id: string;
  job_id: string;
  place: number;
  title: string;
  count: number;
  needs: Json;
};

/** How far a crew has to the job, in miles. */
type JobTravelTable = { job_id: string; crew_id: string; distance: number };

/** Who was told to go. */
type JobPersonTable = {
  job_id: string;
  role_id: string;
  person_id: string;
  sent_by: string;
  sent_at: Instant;
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

export type Person = Selectable<PersonTable>;
export type Attempt = Selectable<AttemptTable>;
