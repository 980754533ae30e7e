/**
 * What there is to say of two examiners who judged the same cases, and of a panel that set a pass mark:
 * whether there is enough to say it comes first.
 */
import type { Result } from '#engine/result.ts';
import { angoff, type AngoffCut, type PanelFault } from './angoff.ts';
import { type Enough, fewest, ifEnough } from './enough.ts';
import { cohenKappa, type Kappa } from './kappa.ts';
import type { Interval } from './wilson.ts';

/** "Substantial" agreement (J. R. Landis, G. G. Koch, Biometrics 33, 1977, from memory). */
export const agreeFrom = 0.61;

export type ExaminersVerdict =
  | { readonly standing: 'too-few-cases'; readonly have: number; readonly need: number }
  /** Both put every case into the same one category: that tells nothing of how they judge others. */
  | { readonly standing: 'nothing-to-tell' }
  | {
      /** The interval lies above the line, on both sides of it, or below. */
      readonly standing: 'agree' | 'unsure' | 'agree-too-little';
      readonly kappa: Kappa;
      /** 95 %, at most 1. */
      readonly interval: Interval;
    };

/** Counts and weights as for `cohenKappa`, which throws on what is no such table. */
export function examinersVerdict(...table: Parameters<typeof cohenKappa>): ExaminersVerdict {
  const kappa = cohenKappa(...table);
  const have = table[0].flat().reduce((sum, count) => sum + count, 0);
  if (have < fewest.cases) return { standing: 'too-few-cases', have, need: fewest.cases };
  if (typeof kappa === 'string') return { standing: 'nothing-to-tell' };
  const reach = 1.959963984540054 * kappa.error;
  const interval = { low: kappa.kappa - reach, high: Math.min(1, kappa.kappa + reach) };
  const standing =
    interval.low >= agreeFrom ? 'agree' : interval.high < agreeFrom ? 'agree-too-little' : 'unsure';
  return { standing, kappa, interval };
}

/** The cut only of a panel of judges enough; ratings as for `angoff`. */
export const panelVerdict = (
  ratings: readonly (readonly number[])[],
): Enough<Result<AngoffCut, readonly PanelFault[]>> =>
  ifEnough(ratings.length, fewest.judges, () => angoff(ratings));
