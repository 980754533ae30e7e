/**
 * Ability as the mean of what answers leave likely, with abilities standard normal before any answer
 * (expected a posteriori; R. D. Bock, R. J. Mislevy, Applied Psychological Measurement 6, 1982).
 * O(items x points).
 */
import { type ItemCurve } from './item-curve.ts';
import { normalQuadrature, type Quadrature } from './quadrature.ts';
import { absent } from './responses.ts';

export type Ability = {
  readonly ability: number;
  /** The spread of what is still likely; 1 before any answer. */
  readonly error: number;
};

/**
 * Answers by item as in `Responses`: 0, 1 or absent, which says nothing. Throws a RangeError unless
 * there are as many as curves.
 */
export function expectedAbility(
  curves: readonly ItemCurve[],
  answers: ArrayLike<number>,
  { points, weights }: Quadrature = normalQuadrature(),
): Ability {
  const posterior = logPosterior(curves, answers, points, weights);
  const peak = posterior.reduce((most, log) => Math.max(most, log), -Infinity);
  let [sum, first] = [0, 0];
  for (let q = 0; q < points.length; q += 1) {
    posterior[q] = Math.exp(posterior[q]! - peak);
    sum += posterior[q]!;
    first += posterior[q]! * points[q]!;
  }
  const ability = first / sum;
  const spread = points.reduce((so, x, q) => so + posterior[q]! * (x - ability) ** 2, 0);
  return { ability, error: Math.sqrt(spread / sum) };
}

/** How likely these answers are of somebody drawn from all persons, as a logarithm. */
export function logMarginal(
  curves: readonly ItemCurve[],
  answers: ArrayLike<number>,
  { points, weights }: Quadrature = normalQuadrature(),
): number {
  const logs = logPosterior(curves, answers, points, weights);
  const peak = logs.reduce((most, log) => Math.max(most, log), -Infinity);
  return peak + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - peak), 0));
}

function logPosterior(
  curves: readonly ItemCurve[],
  answers: ArrayLike<number>,
  points: Float64Array,
  weights: Float64Array,
): Float64Array {
  if (answers.length !== curves.length) {
    throw new RangeError(`There are ${answers.length} answers to ${curves.length} items.`);
  }
  return points.map((x, q) => {
    let log = Math.log(weights[q]!);
    for (const [item, { slope, intercept }] of curves.entries()) {
      if (answers[item] === absent) continue;
      const odds = slope * x + intercept;
      log -= Math.max(odds, 0) + Math.log1p(Math.exp(-Math.abs(odds)));
      if (answers[item] === 1) log += odds;
    }
    return log;
  });
}
