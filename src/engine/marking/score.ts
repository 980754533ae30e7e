/**
 * A score out of 100 whose lines add up. What was lost is the weighted cost over what was at stake
 * (or over the cost itself, where strays cost more than the wall had to lose). Tenths of a point are
 * handed out by largest remainders, so that the lines shown sum to the loss shown.
 */
import { type Rational, approximate, rational, zero } from '#engine/measure/rational.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import { severityWeights } from '#engine/severity.ts';
import type { Deviation } from './deviation.ts';
import { stakeOf } from './stakes.ts';

export type Score = {
  /** 0 to 100, to a tenth; 100 only where nothing deviates. */
  readonly score: number;
  /** What each deviation cost, to a tenth, in the order given; they sum to 100 - score. */
  readonly points: readonly number[];
};

/** Tenths of a point in a full score. */
const tenths = 1000;

export function scoreOf(sequence: Sequence, deviations: readonly Deviation[]): Score {
  const costs = deviations.map((deviation) => costOf(sequence, deviation));
  const cost = costs.reduce((sum, one) => sum.add(one), zero);
  const stake = sequence.steps.reduce((sum, _, place) => sum + stakeOf(sequence, place), 0);
  const basis = cost.gt(rational(stake)) ? cost : rational(stake);
  if (cost.equals(zero)) return { score: 100, points: costs.map(() => 0) };
  const lost = cost.mul(rational(tenths)).div(basis).ceil();
  const points = apportion(
    costs.map((one) => one.mul(lost).div(cost)),
    approximate(lost),
  );
  return {
    score: (tenths - approximate(lost)) / 10,
    points: points.map((point) => point / 10),
  };
}

/** A step left out loses its place, its wait and its settings with it. */
function costOf(sequence: Sequence, deviation: Deviation): Rational {
  const whole =
    deviation.kind === 'left-out'
      ? stakeOf(
          sequence,
          sequence.steps.findIndex(({ id }) => id === deviation.card),
        )
      : severityWeights[deviation.severity];
  return deviation.share.mul(rational(whole));
}

/** Whole numbers that sum to `total`, each its share rounded down or up, largest remainders first. */
function apportion(shares: readonly Rational[], total: number): readonly number[] {
  const floors = shares.map((share) => approximate(share.floor()));
  const left = total - floors.reduce((sum, floor) => sum + floor, 0);
  const favoured = new Set(
    shares
      .map((share, index) => ({ index, rest: share.sub(share.floor()) }))
      .sort((a, b) => b.rest.compare(a.rest) || a.index - b.index)
      .slice(0, left)
      .map(({ index }) => index),
  );
  return floors.map((floor, index) => floor + (favoured.has(index) ? 1 : 0));
}
