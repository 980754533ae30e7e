import { m } from '#ui/messages/generated/messages.js';

/** By the code that the server answers with. */
export const jobFaultWords: Readonly<Record<string, () => string>> = {
  TITLE_WRONG: m.jobs_fault_title,
  PLACE_WRONG: m.jobs_fault_place,
  DAYS_WRONG: m.jobs_fault_days,
  ROLES_WRONG: m.jobs_fault_roles,
  TRAVEL_WRONG: m.jobs_fault_travel,
  NOTE_WRONG: m.jobs_fault_note,
  UNKNOWN_QUALIFICATION: m.jobs_fault_unknown,
  UNKNOWN_CREW: m.jobs_fault_unknown,
  ABSENT: m.jobs_fault_absent,
  CHANGED: m.jobs_fault_changed,
  SHORT: m.jobs_fault_short,
};
