/**
 * How far abilities would come out the same with other items of their kind: the share of their spread
 * that is not error, the variance of the estimates over that plus their mean squared error (from
 * memory; a test holds it to what it claims on made-up answers). It needs no two persons to have
 * answered the same items, as KR-20 does. O(persons).
 */
import type { Ability } from './expected-ability.ts';

/** From 0 to 1, of abilities from `expectedAbility`; undefined for fewer than two. */
export function abilityReliability(abilities: readonly Ability[]): number | undefined {
  const count = abilities.length;
  if (count < 2) return undefined;
  const mean = abilities.reduce((sum, { ability }) => sum + ability, 0) / count;
  const spread = abilities.reduce((sum, { ability }) => sum + (ability - mean) ** 2, 0);
  const errors = abilities.reduce((sum, { error }) => sum + error * error, 0);
  return spread / (spread + errors);
}
