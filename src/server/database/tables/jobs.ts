/** Jobs, and who was sent to them. */
import type { Day, Instant, Json } from './column.ts';

export type JobTables = {
  job: JobTable;
  job_role: JobRoleTable;
  job_travel: JobTravelTable;
  job_person: JobPersonTable;
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
