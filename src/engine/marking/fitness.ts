import { ok, type Result } from '#engine/result.ts';
import { align, priceOf, type AlignFault, type AlignmentCosts } from './align.ts';
import type { Model } from './model.ts';

export type Fitness = {
  readonly cost: number;
  /** Of the model walked alone and every card too many. */
  readonly worst: number;
  /** 1 - cost / worst: from 0, nothing fits, to 1, all does. */
  readonly fitness: number;
};

/**
 * How much of a trace its best alignment explains, as in
 * https://promforum.win.tue.nl/discussion/1615/replay-a-log-on-petri-net-for-conformance-analysis
 */
export function fitness<State>(
  model: Model<State>,
  trace: readonly string[],
  costs: AlignmentCosts,
): Result<Fitness, AlignFault> {
  const aligned = align(model, trace, costs);
  if (!aligned.ok) return aligned;
  const walked = align(model, [], costs);
  if (!walked.ok) return walked;
  const { cost } = aligned.value;
  const worst = trace.reduce((sum, card) => sum + priceOf(costs.trace, card), walked.value.cost);
  return ok({ cost, worst, fitness: worst === 0 ? 1 : 1 - cost / worst });
}
