import type { Sequence } from '#engine/method/sequence.ts';
import { precedes } from '#engine/method/partial-order.ts';
import type { Standing } from './attempt.ts';
import type { Deviation } from './deviation.ts';

/** Disposition of the work, as for any non-conforming work on a site. */
export const outcomes = ['accept', 'rework', 'tear-out'] as const;
export type Outcome = (typeof outcomes)[number];

/** Below this score even minor faults together need rework; this project's own choice. */
export const acceptableScore = 90;

/**
 * Accepted is work with minor faults at most. It is torn out when something critical can only be
 * mended by taking off what covers it, and something does cover it.
 */
export function outcomeOf(
  sequence: Sequence,
  standing: readonly Standing[],
  deviations: readonly Deviation[],
  score: number,
): Outcome {
  const buried = deviations.some(
    (deviation) =>
      deviation.severity === 'critical' &&
      deviation.rework.undo === 'tear-out' &&
      (deviation.kind !== 'left-out' || isCovered(sequence, standing, deviation.card)),
  );
  if (buried) return 'tear-out';
  const sound = deviations.every(({ severity }) => severity === 'minor');
  return sound && score >= acceptableScore ? 'accept' : 'rework';
}

/** Whether work went on that should have waited for a step that was left out. */
function isCovered(sequence: Sequence, standing: readonly Standing[], card: string): boolean {
  const missing = sequence.steps.findIndex(({ id }) => id === card);
  return standing.some(({ step }) => precedes(sequence.order, missing, step));
}
