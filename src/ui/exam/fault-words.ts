import { m } from '#ui/messages/generated/messages.js';

/** Why a sitting was not begun, and what to do. */
export function entryFaultWords(code: string, seconds = 0): string {
  if (code === 'WRONG_CODE') return m.exam_code_wrong();
  if (code === 'TOO_OFTEN') return m.exam_code_too_often({ count: Math.ceil(seconds / 60) });
  return m.exam_code_closed();
}

const sittingFaults: Readonly<Record<string, () => string>> = {
  'by-the-candidate': m.sitting_fault_own,
  'no-reason': m.sitting_fault_reason,
  'no-time': m.sitting_fault_time,
  'still-open': m.sitting_fault_open,
  'not-opened': m.sitting_fault_not_begun,
  'opened-already': m.sitting_fault_begun,
  KEPT_OUT: m.sitting_fault_kept_out,
};

/** Why something was not done with a sitting. */
export const sittingFaultWords = (code: string): string =>
  (sittingFaults[code] ?? m.sitting_fault_other)();
