/** What is given to do, what was done, and how it was marked. */
import type { Generated } from 'kysely';
import type { Instant, Json } from './column.ts';

export type WorkTables = {
  assignment: AssignmentTable;
  assignment_work: AssignmentWorkTable;
  assignment_for: AssignmentForTable;
  attempt: AttemptTable;
  mark: MarkTable;
  standing: StandingTable;
  progress: ProgressTable;
  decision: DecisionTable;
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
export type AttemptTable = {
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
