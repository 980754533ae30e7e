import type { Group } from './group-strata.ts';
import { mantelHaenszel, type MantelHaenszel, type Stratum } from './mantel-haenszel.ts';

/**
 * `not-comparable`: no two persons alike otherwise stand in both groups with both answers, or one group
 * is always right or always wrong beside the other.
 */
export type GroupDifference =
  | { readonly size: 'not-comparable' }
  | ({
      readonly size: 'none-to-speak-of' | 'moderate' | 'large';
      /** The group that does better than those alike in the other. */
      readonly favours: Group;
    } & MantelHaenszel);

/** Of the standard normal distribution, the point that leaves 5 % above it. */
const oneSided95 = 1.6448536269514722;

/**
 * Large from 1.5 on the delta scale if it is surely above 1; moderate from 1 if it is surely not 0 (N.
 * J. Dorans, P. W. Holland 1993, in "Differential item functioning", from memory).
 */
export function groupDifference(strata: readonly Stratum[]): GroupDifference {
  const found = mantelHaenszel(strata);
  if (!found.ok) return { size: 'not-comparable' };
  const { delta, logError, chance } = found.value;
  const far = Math.abs(delta);
  const isLarge = far >= 1.5 && far - oneSided95 * 2.35 * logError > 1;
  const isModerate = far >= 1 && chance < 0.05;
  return {
    size: isLarge ? 'large' : isModerate ? 'moderate' : 'none-to-speak-of',
    favours: delta > 0 ? 'focal' : 'reference',
    ...found.value,
  };
}
