import type { FaultKind } from '#engine/inspection/fault.ts';
import type { FindVerdict } from '#engine/inspection/mark-finds.ts';
import { m } from '#ui/messages/generated/messages.js';

/** Asks for the card, once the kind is said. */
export const whichWords: Readonly<Record<FaultKind, () => string>> = {
  'left-out': m.find_which_left_out,
  'out-of-order': m.find_which_out_of_order,
  'not-on-this-wall': m.find_which_not_on_this_wall,
  rushed: m.find_which_rushed,
  'out-of-tolerance': m.find_which_out_of_tolerance,
};

export const verdictWords: Readonly<Record<FindVerdict | 'missed', () => string>> = {
  found: m.find_verdict_found,
  again: m.find_verdict_again,
  located: m.find_verdict_located,
  'false-alarm': m.find_verdict_false_alarm,
  missed: m.find_verdict_missed,
};
