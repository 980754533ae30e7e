import { m } from '#ui/messages/generated/messages.js';
import type { SignFault } from './hands-on.svelte.ts';

const outcomes: Readonly<Record<string, () => string>> = {
  passed: m.checks_outcome_passed,
  failed: m.checks_outcome_failed,
  open: m.checks_outcome_open,
  'to-be-settled': m.checks_outcome_settle,
};

/** What a check, or the part with all its checks, came to. */
export const outcomeWords = (outcome: string): string =>
  (outcomes[outcome] ?? m.checks_outcome_open)();

const faults: Readonly<Record<string, () => string>> = {
  NOT_RIGHT: m.checks_fault_password,
  OPEN: m.checks_fault_open,
  OVER: m.checks_fault_over,
  NO_REASON: m.checks_fault_reason,
  PHOTOS_MISSING: m.checks_fault_photos,
  KEPT_OUT: m.checks_fault_kept_out,
  UNREADABLE: m.checks_fault_unread,
};

/** Why it could not be signed. */
export const signFaultWords = ({ code, seconds = 0 }: SignFault): string =>
  code === 'TOO_OFTEN'
    ? m.checks_fault_often({ minutes: Math.ceil(seconds / 60) })
    : (faults[code] ?? m.checks_fault_other)();
