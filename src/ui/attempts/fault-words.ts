import type { AttemptFault, AttemptFaultCode } from '#engine/marking/attempt-file.ts';
import { m } from '#ui/messages/generated/messages.js';

const words: Readonly<Record<AttemptFaultCode, () => string>> = {
  NOT_AN_ATTEMPT: m.attempts_fault_not_an_attempt,
  MISSING_FIELD: m.attempts_fault_missing_field,
  UNKNOWN_FIELD: m.attempts_fault_unknown_field,
  WRONG_TYPE: m.attempts_fault_wrong_type,
  UNKNOWN_METHOD: m.attempts_fault_unknown_method,
  UNKNOWN_DATA_SHEET: m.attempts_fault_unknown_data_sheet,
  UNKNOWN_SITE_QUESTION: m.attempts_fault_unknown_site,
  UNKNOWN_SITE_VALUE: m.attempts_fault_unknown_site,
  UNKNOWN_STEP: m.attempts_fault_unknown_step,
  UNKNOWN_SETTING: m.attempts_fault_unknown_setting,
  BAD_QUANTITY: m.attempts_fault_bad_quantity,
  BAD_MINUTE: m.attempts_fault_bad_minute,
  CLOCK_RUNS_BACK: m.attempts_fault_clock,
  TOO_MANY_CARDS: m.attempts_fault_too_many,
  UNSOUND_CONTENT: m.attempts_fault_content,
};

export const faultWords = ({ code }: AttemptFault): string => words[code]();
