/** Sittings of examinations, and checks at the wall. */
import type { Instant, Json } from './column.ts';

export type ExaminationTables = {
  sitting: SittingTable;
  sitting_event: SittingEventTable;
  item_use: ItemUseTable;
  check_basis: CheckBasisTable;
  hands_on_check: HandsOnCheckTable;
  check_photo: CheckPhotoTable;
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
