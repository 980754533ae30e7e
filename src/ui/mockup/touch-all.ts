import { type Attempt, standingOf } from '#engine/marking/attempt.ts';
import { touchAt } from '#engine/marking/touch-test.ts';
import { rational } from '#engine/measure/rational.ts';
import type { Touch } from './news.ts';

/** What a knuckle tells of everything that stands and dries, in the order in which it was put up. */
export function touchAll(attempt: Attempt, minute: number): readonly Touch[] {
  const { sequence } = attempt;
  const standing = standingOf(attempt);
  return standing.flatMap((card) => {
    const step = sequence.steps[card.step]!;
    return step.dries ? [{ step, feel: touchAt(sequence, standing, card, rational(minute)) }] : [];
  });
}
