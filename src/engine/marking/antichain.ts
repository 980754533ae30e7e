/**
 * The heaviest set of steps of which no two are ordered: a maximum-weight antichain of a strict partial
 * order (R. P. Dilworth, "A decomposition theorem for partially ordered sets", Annals of Mathematics 51,
 * 1950), as what the lightest cover of the ordered pairs leaves (D. R. Fulkerson, "Note on Dilworth's
 * decomposition theorem", Proc. AMS 7, 1956).
 *
 * What a cover leaves is an antichain, and weighs the total less the cover or more. And each antichain A
 * to which nothing can be added is left by a cover that weighs the rest: take x as a second where it
 * follows a step of A, as a first where it precedes one. That touches every pair u < v, for if u is not
 * taken as a first, it is in A or follows a step of A, and so v does.
 *
 * Ties: the heaviest antichains form a lattice, A below B when each step of B is in A or follows a step
 * of it (Dilworth, "Some combinatorial problems on partially ordered sets", 1960). The cover with the
 * most seconds leaves the lowest: of a pair that weighs the same, the step that should come first.
 */
import type { Pair } from '#engine/method/partial-order.ts';
import { lightestCover } from './lightest-cover.ts';

/**
 * Those of the steps, as listed. `pairs` are all that are ordered, and not only those that were stated;
 * weights are by step, whole and above 0.
 */
export function heaviestAntichain(
  steps: readonly number[],
  pairs: readonly Pair[],
  weights: readonly number[],
): readonly number[] {
  const { firsts, seconds } = lightestCover(pairs, weights);
  return steps.filter((step) => !firsts[step] && !seconds[step]);
}
