import { rational } from '#engine/measure/rational.ts';
import type { Feel } from '#engine/method/drying.ts';
import type { SequenceStep } from '#engine/method/sequence.ts';
import { type Attempt, standingOf } from './attempt.ts';
import { touchAt } from './touch-test.ts';

export type Touch = { readonly step: SequenceStep; readonly feel: Feel };

/** What a knuckle tells of everything that stands and dries, in the order in which it was put up. */
export function touchAll(attempt: Attempt, minute: number): readonly Touch[] {
  const { sequence } = attempt;
  const standing = standingOf(attempt);
  return standing.flatMap((card) => {
    const step = sequence.steps[card.step]!;
    return step.dries ? [{ step, feel: touchAt(sequence, standing, card, rational(minute)) }] : [];
  });
}
