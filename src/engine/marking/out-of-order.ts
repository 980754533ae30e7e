import { rational } from '#engine/measure/rational.ts';
import { precedes } from '#engine/method/partial-order.ts';
import type { Ordered, Sequence } from '#engine/method/sequence.ts';
import { severities, severityWeights } from '#engine/severity.ts';
import type { Standing } from './attempt.ts';
import type { OutOfOrder } from './deviation.ts';
import { type Lifted, type LiftOut, liftOut } from './lift-out.ts';
import { gradedShare } from './stakes.ts';

/** The least that has to be lifted out and put back for the rest to stand right. */
export function liftFrom(sequence: Sequence, standing: readonly Standing[]): LiftOut {
  return liftOut({
    order: sequence.order,
    attempt: standing.map(({ step }) => step),
    weights: sequence.steps.map(({ severity }) => severityWeights[severity]),
    stated: sequence.constraints.map(({ before, after }) => [before, after] as const),
  });
}

/** One deviation for each step lifted out, with the constraints that it broke. */
export function outOfOrder(
  sequence: Sequence,
  standing: readonly Standing[],
  lift: LiftOut,
): readonly OutOfOrder[] {
  const farthest = Math.max(1, sequence.steps.length - 1);
  return lift.lifted.map((lifted) => {
    const step = sequence.steps[lifted.step]!;
    const broken = brokenBy(sequence, lifted);
    return {
      kind: 'out-of-order',
      card: step.id,
      at: standing.find((card) => card.step === lifted.step)?.at,
      severity: broken[0]?.severity ?? step.severity,
      because: broken[0]?.because ?? step.reason,
      rework: step.rework,
      share: gradedShare(rational(lifted.places, farthest)),
      places: lifted.places,
      direction: lifted.direction,
      broken,
    };
  });
}

/**
 * The stated constraints behind the inverted pairs, the most severe first. A pair that follows only
 * through steps in between speaks with the reason of the constraint that leads to its later step.
 */
function brokenBy({ constraints, order }: Sequence, { broken }: Lifted): readonly Ordered[] {
  return broken
    .map(([before, after]) => {
      const stated =
        constraints.find((c) => c.before === before && c.after === after) ??
        constraints.find((c) => c.after === after && precedes(order, before, c.before));
      return { ...stated!, before, after };
    })
    .sort((a, b) => severities.indexOf(b.severity) - severities.indexOf(a.severity));
}
