/**
 * Ways up the likelihood from where it stands. `emStep` is the maximization step of EM, one Newton step
 * for each item on what full knowledge of abilities would tell (K. Lange, "A gradient algorithm locally
 * equivalent to the EM algorithm", JRSS B 57, 1995): sure but slow. `newtonStep` uses the likelihood's own
 * bend: fast near the top, of no use far from it. Both in full parameters: slopes by item, then
 * intercepts.
 */
import { type Cholesky, cholesky, solved } from './cholesky.ts';
import type { Expectation } from './expectation.ts';
import { freeCount, freeMatrix, freeVector, fullVector, type ItemModel } from './item-model.ts';
import { observedInformation } from './observed-information.ts';
import type { Patterns } from './patterns.ts';
import type { Quadrature } from './quadrature.ts';

/** Each item by itself but for a slope that they share, so that the step solves in O(items). */
export function emStep(model: ItemModel, { gradient, complete }: Expectation): Float64Array {
  const { slope, both, intercept } = complete;
  const items = slope.length;
  const step = new Float64Array(2 * items);
  const left = slope.map((own, i) => own - (both[i]! * both[i]!) / intercept[i]!);
  const pull = slope.map(
    (_, i) => gradient[i]! - (both[i]! * gradient[items + i]!) / intercept[i]!,
  );
  const sum = (values: Float64Array): number => values.reduce((so, value) => so + value, 0);
  const common = sum(pull) / sum(left);
  for (let i = 0; i < items; i += 1) {
    if (model === 'slope-common') step[i] = common;
    if (model === 'slope-each') step[i] = pull[i]! / left[i]!;
    step[items + i] = (gradient[items + i]! - both[i]! * step[i]!) / intercept[i]!;
  }
  return step;
}

/** Undefined where the likelihood does not bend down in every free direction. */
export const bendAt = (
  model: ItemModel,
  patterns: Patterns,
  quadrature: Quadrature,
  here: Expectation,
): Cholesky | undefined => {
  const full = observedInformation(patterns, quadrature, here);
  return cholesky(freeMatrix(model, patterns.items, full), freeCount(model, patterns.items));
};

export function newtonStep(model: ItemModel, bend: Cholesky, { gradient }: Expectation) {
  const items = gradient.length / 2;
  return fullVector(model, items, solved(bend, freeVector(model, items, gradient)));
}
