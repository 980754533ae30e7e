/** From an application to the ruling on it, and what its questions are worth. */
import type { Day, Instant, Json } from './column.ts';

export type CertificationTables = {
  application: ApplicationTable;
  involvement: InvolvementTable;
  part_result: PartResultTable;
  item_response: ItemResponseTable;
  retired_item: RetiredItemTable;
  panel: PanelTable;
  panel_rating: PanelRatingTable;
  ruling: RulingTable;
  appeal: AppealTable;
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
