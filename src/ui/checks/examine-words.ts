import type { KeptOut } from '#engine/exam/separation.ts';
import type { PartState } from '#engine/exam/standing.ts';
import { plainDay } from '#ui/decisions/plain-day.ts';
import { m } from '#ui/messages/generated/messages.js';

export type ExamineFault =
  | { readonly code: 'ABSENT' | 'UNKNOWN_PART' | 'UNDER_WAY' }
  | { readonly code: 'NOT_NOW'; readonly state: PartState }
  | { readonly code: 'KEPT_OUT'; readonly why: readonly KeptOut[] };

export function keptOutWords(why: KeptOut): string {
  if (why.code === 'IS_CANDIDATE') return m.checks_kept_own();
  const until = plainDay(why.from);
  return why.code === 'TRAINED'
    ? m.checks_kept_trained({ until })
    : m.checks_kept_examined({ until });
}

function stateWords(state: PartState): string {
  if (state.kind === 'must-wait') return m.checks_wait_until({ from: plainDay(state.from) });
  return state.kind === 'passed' ? m.checks_passed() : m.checks_needs_certificate();
}

/** Why somebody may not begin a check. */
export function examineFaultWords(fault: ExamineFault): string {
  if (fault.code === 'KEPT_OUT') return fault.why.map(keptOutWords).join(' ');
  if (fault.code === 'NOT_NOW') return stateWords(fault.state);
  return fault.code === 'UNDER_WAY' ? m.checks_under_way() : m.checks_gone();
}
