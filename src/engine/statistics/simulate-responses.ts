/**
 * Made-up answers from known curves and abilities, by seed: what an estimate is held against to see
 * whether it finds what was put in. O(persons x items).
 */
import { type Random, whole } from '#engine/random.ts';
import type { ItemCurve } from './item-curve.ts';
import type { Responses } from './responses.ts';

/** At least 2^-33, below 1. */
const share = (random: Random): number => (whole(random, 0, 0xffff_ffff) + 0.5) / 2 ** 32;

/** From the standard normal distribution (G. E. P. Box, M. E. Muller, Ann. Math. Stat. 29, 1958). */
export function drawAbilities(random: Random, persons: number): Float64Array {
  return Float64Array.from({ length: persons }, () => {
    const far = Math.sqrt(-2 * Math.log(share(random)));
    return far * Math.cos(2 * Math.PI * share(random));
  });
}

/** A row for each ability, nothing absent. */
export function simulateResponses(
  random: Random,
  curves: readonly ItemCurve[],
  abilities: Float64Array,
): Responses {
  const scores = new Uint8Array(abilities.length * curves.length);
  let at = 0;
  for (const ability of abilities) {
    for (const { slope, intercept } of curves) {
      scores[at] = share(random) * (1 + Math.exp(-(slope * ability + intercept))) < 1 ? 1 : 0;
      at += 1;
    }
  }
  return { persons: abilities.length, items: curves.length, scores };
}
