import type { PartState } from '#engine/exam/standing.ts';
import { m } from '#ui/messages/generated/messages.js';
import { plainDay } from './plain-day.ts';

/** Where a part stands on the day of the sheet. */
export function partStateWords(state: PartState): string {
  switch (state.kind) {
    case 'passed':
      return m.evidence_part_passed({ until: plainDay(state.until) });
    case 'may-take':
      return m.evidence_part_may_take();
    case 'must-wait':
      return m.checks_wait_until({ from: plainDay(state.from) });
    case 'needs-certificate':
      return m.checks_needs_certificate();
  }
}

const results: Readonly<Record<string, () => string>> = {
  passed: m.evidence_result_passed,
  failed: m.evidence_result_failed,
  void: m.evidence_result_void,
};

export const resultWords = (result: string): string =>
  (results[result] ?? m.evidence_result_void)();
