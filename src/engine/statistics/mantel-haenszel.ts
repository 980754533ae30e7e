/**
 * Whether two groups differ on something once those who are alike otherwise are compared with each
 * other: the common odds ratio of many two-by-two tables and its chi-square with Yates's correction (N.
 * Mantel, W. Haenszel, JNCI 22, 1959), with the standard error of the ratio's logarithm (J. Robins, N.
 * Breslow, S. Greenland, Biometrics 42, 1986). O(tables).
 */
import { fault, ok, type Result } from '#engine/result.ts';
import { chiSquareTail } from './chi-square.ts';

/** Persons of one standing: of the reference group and of the focal one, right and wrong. */
export type Stratum = {
  readonly referenceRight: number;
  readonly referenceWrong: number;
  readonly focalRight: number;
  readonly focalWrong: number;
};

export type MantelHaenszel = {
  /** Above 1 where the reference group does better. */
  readonly oddsRatio: number;
  /** Standard error of the logarithm of the odds ratio. */
  readonly logError: number;
  readonly chiSquare: number;
  /** How often chance alone gives as large a chi-square, of one degree of freedom. */
  readonly chance: number;
  /**
   * -2.35 times that logarithm: below 0 where the focal group does worse (P. W. Holland, D. T. Thayer
   * 1988, from memory).
   */
  readonly delta: number;
};

/**
 * `NOTHING_TO_COMPARE`: no table has both groups, and both right and wrong. `NO_RATIO`: one group is never
 * right, or never wrong, where it can be compared, so that the odds ratio would be 0 or without bound.
 */
export type MantelHaenszelFault = {
  readonly code: 'NOTHING_TO_COMPARE' | 'NO_RATIO';
  readonly message: string;
};

/** Counts are whole numbers, 0 or more; else a RangeError. */
export function mantelHaenszel(
  strata: readonly Stratum[],
): Result<MantelHaenszel, MantelHaenszelFault> {
  let [favour, against, surplus, variance] = [0, 0, 0, 0];
  let [errorWith, errorBoth, errorAgainst] = [0, 0, 0];
  for (const { referenceRight: a, referenceWrong: b, focalRight: c, focalWrong: d } of strata) {
    if (![a, b, c, d].every((count) => Number.isSafeInteger(count) && count >= 0)) {
      throw new RangeError('Counts are whole numbers, 0 or more.');
    }
    const n = a + b + c + d;
    const margins = (a + b) * (c + d) * (a + c) * (b + d);
    if (margins === 0) continue;
    const [r, s] = [(a * d) / n, (b * c) / n];
    const [p, q] = [(a + d) / n, (b + c) / n];
    favour += r;
    against += s;
    surplus += a - ((a + b) * (a + c)) / n;
    variance += margins / (n * n * (n - 1));
    errorWith += p * r;
    errorBoth += p * s + q * r;
    errorAgainst += q * s;
  }
  if (variance === 0) {
    const message = 'Nowhere are both groups together with both right and wrong answers.';
    return fault({ code: 'NOTHING_TO_COMPARE', message });
  }
  if (favour === 0 || against === 0) {
    const message = 'One group is always right, or always wrong, beside the other.';
    return fault({ code: 'NO_RATIO', message });
  }
  const oddsRatio = favour / against;
  const chiSquare = Math.max(0, Math.abs(surplus) - 0.5) ** 2 / variance;
  const spread =
    errorWith / (2 * favour * favour) +
    errorBoth / (2 * favour * against) +
    errorAgainst / (2 * against * against);
  return ok({
    oddsRatio,
    logError: Math.sqrt(spread),
    chiSquare,
    chance: chiSquareTail(chiSquare, 1),
    delta: -2.35 * Math.log(oddsRatio),
  });
}
