import { type Cholesky, inverse } from './cholesky.ts';
import type { Parameters } from './expectation.ts';
import type { ItemEstimate } from './item-fit.ts';
import { freePlaces, type ItemModel } from './item-model.ts';
import type { ItemSupport } from './item-support.ts';

/**
 * Parameters at a maximum with their standard errors, from the root of the observed information there.
 * The error of a difficulty, as of minus intercept over slope, is by the delta method. Parameters are
 * of the supported items, in order.
 */
export function estimatesOf(
  model: ItemModel,
  { slopes, intercepts }: Parameters,
  bend: Cholesky,
  support: readonly ItemSupport[],
): readonly ItemEstimate[] {
  const covariance = inverse(bend);
  const places = freePlaces(model, slopes.length);
  const shared = (one: number, other: number): number =>
    one < 0 || other < 0 ? 0 : covariance[one * bend.side + other]!;
  let at = -1;
  return support.map(({ item, answers, why }) => {
    if (why !== undefined) return { item, answers, estimable: false, reason: why };
    at += 1;
    const [slope, intercept] = [slopes[at]!, intercepts[at]!];
    const [a, d] = [places[at]!, places[slopes.length + at]!];
    const bySlope = intercept / (slope * slope);
    const ofDifficulty =
      bySlope * bySlope * shared(a, a) -
      (2 * bySlope * shared(a, d)) / slope +
      shared(d, d) / (slope * slope);
    return {
      item,
      answers,
      estimable: true,
      slope,
      slopeError: a < 0 ? undefined : Math.sqrt(shared(a, a)),
      intercept,
      interceptError: Math.sqrt(shared(d, d)),
      difficulty: -intercept / slope,
      difficultyError: Math.sqrt(Math.max(0, ofDifficulty)),
    };
  });
}
