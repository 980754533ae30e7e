/**
 * Item curves from answers by marginal maximum likelihood (R. D. Bock, M. Lieberman, Psychometrika 35,
 * 1970; R. D. Bock, M. Aitkin, Psychometrika 46, 1981), with abilities standard normal: EM to come
 * near, then Newton's steps on the same likelihood with its bend kept as long as it serves. No step is
 * taken that lowers the likelihood. Standard errors are from the observed information. Answers that are
 * absent are taken to be so for no reason that has to do with ability beyond what the other answers
 * tell. A dozen or two cycles of O(patterns x (items + points)), and the bend twice or so.
 */
import { fault, ok, type Result } from '#engine/result.ts';
import { bendAt, emStep, newtonStep } from './ascent.ts';
import type { Cholesky } from './cholesky.ts';
import { estimatesOf } from './estimates-of.ts';
import { type Expectation, expectation, type Parameters } from './expectation.ts';
import type { FitFault, ItemFit, StoppedFit } from './item-fit.ts';
import { fewestItems, freeCount, freeVector, type ItemModel } from './item-model.ts';
import { itemSupport } from './item-support.ts';
import { type Patterns, patternsOf } from './patterns.ts';
import { normalQuadrature, type Quadrature } from './quadrature.ts';
import type { Responses } from './responses.ts';

export type FitLimits = {
  readonly cycles: number;
  /** Converged where the likelihood per person is no steeper than this in any parameter. */
  readonly steepest: number;
  readonly points: number;
  /** An item with fewer answers is not estimated. */
  readonly fewestAnswers: number;
};

/** With 10 answers the standard error of an intercept is 0.7 or more: easy looks like hard. */
export const usualLimits: FitLimits = {
  cycles: 400,
  steepest: 1e-8,
  points: 61,
  fewestAnswers: 10,
};

/** Far beyond what any real question shows. */
const runaway = 20;
const emCycles = 10;

export function fitItems(
  responses: Responses,
  model: ItemModel,
  limits: Partial<FitLimits> = {},
): Result<ItemFit, FitFault> {
  const { cycles, steepest, points, fewestAnswers } = { ...usualLimits, ...limits };
  if (!(cycles >= 1 && steepest > 0 && points >= 2 && fewestAnswers >= 1)) {
    return fault({ code: 'NOT_A_LIMIT', message: 'Limits are above 0, and points 2 or more.' });
  }
  const support = itemSupport(responses, fewestAnswers);
  const named = support.flatMap(({ why, item }) => (why === undefined ? [item] : []));
  if (named.length < fewestItems[model]) {
    const message = `${named.length} items can be estimated; this model takes ${fewestItems[model]}.`;
    return fault({ code: 'TOO_FEW_ITEMS', message });
  }
  const patterns = patternsOf(responses, named);
  const quadrature = normalQuadrature(points);
  const climbed = climb(model, patterns, quadrature, { cycles, steepest });
  const run = {
    model,
    persons: patterns.persons,
    patterns: patterns.counts.length,
    cycles: climbed.cycles,
    steepest: steepnessOf(model, patterns, climbed.here),
    logLikelihood: climbed.here.logLikelihood,
  };
  if (climbed.bend === undefined)
    return ok({ ...run, outcome: 'not-converged', reason: climbed.why });
  const freeParameters = freeCount(model, patterns.items);
  const misfit = -2 * run.logLikelihood;
  return ok({
    ...run,
    outcome: 'converged',
    freeParameters,
    aic: misfit + 2 * freeParameters,
    bic: misfit + freeParameters * Math.log(run.persons),
    items: estimatesOf(model, climbed.here.parameters, climbed.bend, support),
  });
}

type Climbed = { readonly here: Expectation; readonly cycles: number } & (
  { readonly bend: Cholesky } | { readonly bend: undefined; readonly why: StoppedFit['reason'] }
);

const steepnessOf = (model: ItemModel, { items, persons }: Patterns, { gradient }: Expectation) =>
  freeVector(model, items, gradient).reduce((most, one) => Math.max(most, Math.abs(one)), 0) /
  persons;

function climb(
  model: ItemModel,
  patterns: Patterns,
  quadrature: Quadrature,
  limits: { readonly cycles: number; readonly steepest: number },
): Climbed {
  let here = expectation(patterns, quadrature, startOf(patterns));
  let cycles = 1;
  let bend: Cholesky | undefined;
  let emLeft = emCycles;
  for (;;) {
    const steepness = steepnessOf(model, patterns, here);
    if (steepness <= limits.steepest) {
      const last = bendAt(model, patterns, quadrature, here);
      return last ? { here, cycles, bend: last } : { here, cycles, bend: undefined, why: 'stuck' };
    }
    if (here.parameters.slopes.some((slope) => Math.abs(slope) > runaway)) {
      return { here, cycles, bend: undefined, why: 'slope-runs-away' };
    }
    if (emLeft <= 0) bend ??= bendAt(model, patterns, quadrature, here);
    const step = bend ? newtonStep(model, bend, here) : emStep(model, here);
    let next: Expectation | undefined;
    for (let scale = 1; scale > 1e-3 && !next; scale /= 2) {
      if (cycles >= limits.cycles) return { here, cycles, bend: undefined, why: 'out-of-cycles' };
      const there = expectation(patterns, quadrature, moved(here.parameters, step, scale));
      cycles += 1;
      // Equal but for what rounding leaves.
      const floor = here.logLikelihood - 1e-12 * Math.abs(here.logLikelihood);
      if (there.logLikelihood >= floor) next = there;
    }
    if (!next && !bend) return { here, cycles, bend: undefined, why: 'stuck' };
    if (!bend) emLeft = emLeft > 0 ? emLeft - 1 : emCycles;
    if (!next) emLeft = emCycles;
    // A bend that has served its time is measured anew.
    if (!next || steepnessOf(model, patterns, next) > steepness / 10) bend = undefined;
    here = next ?? here;
  }
}

/** Slopes of 1, and intercepts that give each item its share of right answers, about. */
function startOf({ items, rights, counts, forms }: Patterns): Parameters {
  const answers = new Float64Array(items);
  for (const { from, to, answered } of forms) {
    const persons = counts.subarray(from, to).reduce((sum, count) => sum + count, 0);
    for (const item of answered) answers[item]! += persons;
  }
  return {
    slopes: new Float64Array(items).fill(1),
    // The spread of abilities flattens the curve of a crowd by about the root of 1 + slope^2 / 2.9.
    intercepts: rights.map((right, i) => 1.16 * Math.log(right / (answers[i]! - right))),
  };
}

function moved({ slopes, intercepts }: Parameters, step: Float64Array, scale: number): Parameters {
  const items = slopes.length;
  return {
    slopes: slopes.map((slope, i) => slope + scale * step[i]!),
    intercepts: intercepts.map((intercept, i) => intercept + scale * step[items + i]!),
  };
}
