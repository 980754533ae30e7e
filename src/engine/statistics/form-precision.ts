/**
 * How exactly a form tells people apart, from the curves of the items it is drawn from: what its answers
 * tell at each ability, and how far a result at the pass mark would wander on another such form. Of each
 * topic a form takes so many, each item as likely, so that the mean over the topic counts. O(items).
 */
import { chanceOf, itemInformation, type ItemCurve } from './item-curve.ts';

export type TopicCurves = { readonly count: number; readonly curves: readonly ItemCurve[] };

/** Expected number right, its variance and the information, of a form at one ability. */
export function formAt(topics: readonly TopicCurves[], ability: number) {
  const sum = (value: (curve: ItemCurve) => number): number =>
    topics.reduce(
      (all, { count, curves }) =>
        curves.length === 0
          ? all
          : all + (count / curves.length) * curves.reduce((so, curve) => so + value(curve), 0),
      0,
    );
  return {
    right: sum((curve) => chanceOf(curve, ability)),
    variance: sum((curve) => {
      const chance = chanceOf(curve, ability);
      return chance * (1 - chance);
    }),
    information: sum((curve) => itemInformation(curve, ability)),
  };
}

const [lowest, highest] = [-6, 6];

/** The ability at which so many are expected right; at an end where none is. By halving. */
export function abilityFor(topics: readonly TopicCurves[], right: number): number {
  let [low, high] = [lowest, highest];
  for (let step = 0; step < 50; step += 1) {
    const middle = (low + high) / 2;
    if (formAt(topics, middle).right < right) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
