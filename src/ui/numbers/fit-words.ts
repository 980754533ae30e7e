/** Why there is no curve, or what it took to find one. */
import type { CurveSaid, NoCurves } from '#engine/statistics/item-fit.ts';
import { m } from '#ui/messages/generated/messages.js';

const stopped = {
  'out-of-cycles': m.numbers_out_of_cycles,
  'slope-runs-away': m.numbers_runs_away,
  stuck: m.numbers_stuck,
} as const;

export const noCurvesWords = (none: NoCurves): string =>
  none.outcome === 'nothing-to-fit'
    ? m.numbers_nothing_to_fit()
    : stopped[none.reason]({ cycles: none.cycles });

const unfitted = {
  'all-right': m.numbers_all_right,
  'all-wrong': m.numbers_all_wrong,
  'too-few-answers': m.numbers_few_for_curve,
} as const;

/** Undefined where there is a curve. */
export function noCurveWords(said: CurveSaid): string | undefined {
  if (said.outcome !== 'converged') return noCurvesWords(said);
  return said.estimate.estimable ? undefined : unfitted[said.estimate.reason]();
}
