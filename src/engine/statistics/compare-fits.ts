/**
 * Whether a wider model tells the same answers better than chance would let it: twice the gain in
 * log-likelihood is a chi-square with as many degrees as parameters were added (S. S. Wilks, Ann. Math.
 * Stat. 9, 1938). O(1).
 */
import { fault, ok, type Result } from '#engine/result.ts';
import { chiSquareTail } from './chi-square.ts';
import type { ItemFit } from './item-fit.ts';

export type FitComparison = {
  readonly ratio: number;
  readonly degrees: number;
  /** How often chance alone gains as much. */
  readonly chance: number;
};

export type ComparisonFault = {
  readonly code: 'NOT_CONVERGED' | 'NOT_NESTED' | 'OTHER_ANSWERS';
  readonly message: string;
};

/** Both of the same answers, as far as persons, patterns and items tell. */
export function compareFits(
  narrow: ItemFit,
  wide: ItemFit,
): Result<FitComparison, ComparisonFault> {
  if (narrow.outcome !== 'converged' || wide.outcome !== 'converged') {
    return refusal('NOT_CONVERGED', 'A run that stopped short says nothing of its model.');
  }
  if (narrow.persons !== wide.persons || narrow.patterns !== wide.patterns) {
    return refusal('OTHER_ANSWERS', 'The two were fitted to different answers.');
  }
  const degrees = wide.freeParameters - narrow.freeParameters;
  if (degrees < 1) return refusal('NOT_NESTED', 'The second model has to be the wider one.');
  const ratio = 2 * (wide.logLikelihood - narrow.logLikelihood);
  return ok({ ratio, degrees, chance: chiSquareTail(Math.max(0, ratio), degrees) });
}

const refusal = (code: ComparisonFault['code'], message: string) => fault({ code, message });
