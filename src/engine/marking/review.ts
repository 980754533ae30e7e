import type { StepId } from '#engine/method/method.ts';
import { severities } from '#engine/severity.ts';
import { type WaterResult, waterTest } from '#engine/water/water-test.ts';
import { type Attempt, standingOf } from './attempt.ts';
import { breachOf } from './breach-of.ts';
import type { Deviation } from './deviation.ts';
import { doneAgain } from './done-again.ts';
import { leftOut } from './left-out.ts';
import { notOnThisWall } from './not-on-this-wall.ts';
import { type Outcome, outcomeOf } from './outcome.ts';
import { liftFrom, outOfOrder } from './out-of-order.ts';
import { outOfTolerance } from './out-of-tolerance.ts';
import { rushed } from './rushed.ts';
import { scoreOf } from './score.ts';

/** An item of the punch list: a deviation and what it cost of 100. */
export type Item = Deviation & { readonly points: number };

export type Review = {
  readonly score: number;
  readonly outcome: Outcome;
  /** The punch list, the most severe first, then as played; what was left out comes last. */
  readonly items: readonly Item[];
  /** The correct order that is nearest to what was played. */
  readonly nearestOrder: readonly StepId[];
  /** Breaches are counted by place in `items`. */
  readonly water: WaterResult;
};

/** Marks an attempt. The same attempt and content always give the same review. */
export function review(attempt: Attempt): Review {
  const { sequence } = attempt;
  const standing = standingOf(attempt);
  const lift = liftFrom(sequence, standing);
  const deviations = [
    ...outOfOrder(sequence, standing, lift),
    ...rushed(sequence, standing),
    ...outOfTolerance(sequence, standing),
    ...notOnThisWall(attempt),
    ...doneAgain(attempt),
    ...leftOut(sequence, standing),
  ].sort(bySeverityThenPlace);
  const { score, points } = scoreOf(sequence, deviations);
  return {
    score,
    outcome: outcomeOf(sequence, standing, deviations, score),
    items: deviations.map((deviation, index) => ({ ...deviation, points: points[index] ?? 0 })),
    nearestOrder: lift.nearestOrder.map((place) => sequence.steps[place]!.id),
    water: waterTest(
      sequence.method.water.places,
      sequence.joints,
      deviations.map((deviation) => breachOf(sequence, deviation)),
    ),
  };
}

const bySeverityThenPlace = (a: Deviation, b: Deviation): number =>
  severities.indexOf(b.severity) - severities.indexOf(a.severity) ||
  (a.at ?? Infinity) - (b.at ?? Infinity) ||
  0;
