/** Where people go wrong most surely, out of a tally. O(n log n) in its rows. */
import { type Interval, wilson } from '#engine/statistics/wilson.ts';
import { type Spot, spotKey } from './spot.ts';
import type { Tally, TallyRow } from './tally.ts';

export type Trouble = {
  readonly spot: Spot;
  /** The reviews in which it could have gone wrong: one or more. */
  readonly judged: number;
  readonly wrong: number;
  /** Whom it went wrong for, the most often first. */
  readonly persons: readonly Pick<TallyRow, 'person' | 'judged' | 'wrong'>[];
  /** How often it goes wrong: the rates that these reviews do not speak against, at 95 %. */
  readonly rate: Interval;
  readonly isTooFew: boolean;
};

/**
 * Fewer reviews than this say too little. At ten, one that never went wrong may still do so in more
 * than a quarter of all (0 to 0.28); this project's own choice.
 */
export const fewestToSay = 10;

/**
 * One for each spot judged, first where one may be surest that it goes wrong often: by the low end of
 * the interval, then by how often, then by name; those with too few reviews come after all others (once
 * in one would else come before 12 in 40). The interval takes reviews as if they did not depend on each
 * other; many by one person tell of that person, so look at `persons`, too.
 */
export function whereItGoesWrong(tally: Tally): readonly Trouble[] {
  const spots = Map.groupBy(tally, ({ spot }) => spotKey(spot));
  return [...spots.values()]
    .map((rows) => {
      const judged = rows.reduce((sum, row) => sum + row.judged, 0);
      const wrong = rows.reduce((sum, row) => sum + row.wrong, 0);
      return {
        spot: rows[0]!.spot,
        judged,
        wrong,
        persons: rows
          .filter((row) => row.wrong > 0)
          .map(({ person, judged, wrong }) => ({ person, judged, wrong }))
          .toSorted((a, b) => b.wrong - a.wrong),
        rate: wilson(wrong, judged),
        isTooFew: judged < fewestToSay,
      };
    })
    .toSorted(
      (a, b) =>
        Number(a.isTooFew) - Number(b.isTooFew) || b.rate.low - a.rate.low || b.wrong - a.wrong,
    );
}
