import type { PartKind } from '#engine/exam/scheme.ts';
import type { PartState } from '#engine/exam/standing.ts';
import { m } from '#ui/messages/generated/messages.js';
import { dayWords } from '#ui/people/day-words.ts';

/** A day of the calendar, as noon of it, so that it is the same day everywhere. */
const dayOf = (date: string): string => dayWords(`${date}T12:00:00Z`);

export const kindWords: Readonly<Record<PartKind, () => string>> = {
  written: m.part_written,
  takeoff: m.part_takeoff,
  'mock-up': m.part_mock_up,
  'hands-on': m.part_hands_on,
};

/** Where a part stands: a word, and what it means. */
export function stateWords(state: PartState | undefined): {
  readonly word: string;
  readonly means: string;
} {
  switch (state?.kind) {
    case 'passed':
      return {
        word: m.part_passed(),
        means: m.part_counts_until({ on: dayOf(state.on), until: dayOf(state.until) }),
      };
    case 'may-take':
      return { word: m.part_may_take(), means: m.part_tries_left({ count: state.left }) };
    case 'must-wait':
      return {
        word: m.part_must_wait(),
        means:
          state.because === 'just-failed'
            ? m.part_wait_failed({ from: dayOf(state.from) })
            : m.part_wait_tries({ from: dayOf(state.from) }),
      };
    case 'needs-certificate':
      return { word: m.part_must_wait(), means: m.part_needs_certificate() };
    case undefined:
      return { word: '', means: '' };
  }
}

type OpeningFault = {
  readonly code: string;
  readonly from?: string;
  readonly schemes?: readonly string[];
};

/** Why no application was opened; `titleOf` says what a scheme is called. */
export function openingFaultWords(
  { code, from, schemes = [] }: OpeningFault,
  titleOf: (scheme: string) => string,
): string {
  switch (code) {
    case 'UNKNOWN_PERSON':
      return m.apply_fault_person();
    case 'OPEN_ALREADY':
      return m.apply_fault_open();
    case 'SUSPENDED':
      return m.apply_fault_suspended();
    case 'NOT_DUE':
      return m.apply_fault_not_due({ from: dayOf(from ?? '') });
    case 'NEEDS_CERTIFICATE':
      return m.apply_fault_needs({ schemes: schemes.map(titleOf).join(', ') });
    default:
      return m.apply_fault_scheme();
  }
}

const setUpFaults: Readonly<Record<string, () => string>> = {
  CLOSED: m.sit_fault_closed,
  OWN: m.sitting_fault_own,
  UNDER_WAY: m.sit_fault_under_way,
  NOT_NOW: m.sit_fault_not_now,
  NO_FORM: m.sit_fault_no_form,
};

export const setUpFaultWords = (code: string): string =>
  (setUpFaults[code] ?? m.sitting_fault_other)();
