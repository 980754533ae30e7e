/**
 * How often each person could have gone wrong at each spot of a method, and did: a sum over reviews, in
 * plain rows that can be stored as they are and summed again. Neither order nor grouping matters:
 * tallies of persons sum to that of their crew. Each review is to be tallied once; the same one twice
 * counts twice.
 *
 * One review costs O(cards x steps + constraints), and a sum O(n log n) in its rows: for many reviews
 * take `tallyOf`, which sorts once.
 */
import type { Reviewed } from '#engine/tracing/seen.ts';
import { seenAt } from './seen-at.ts';
import { type Spot, spotKey } from './spot.ts';

export type TallyRow = {
  readonly spot: Spot;
  /** Whose reviews these were, by id. */
  readonly person: string;
  /** The reviews in which it could have gone wrong. */
  readonly judged: number;
  /** Those in which it did; no more than were judged. */
  readonly wrong: number;
};

/** By spot, then by person; one row for both together. */
export type Tally = readonly TallyRow[];

/** One attempt of one person, with its review. */
export type One = Reviewed & { readonly person: string };

export const emptyTally: Tally = [];

/** The rows that one review adds. */
export const tallyOfOne = ({ person, ...reviewed }: One): Tally =>
  summed(
    seenAt(reviewed).map(({ spot, isWrong }) => ({
      spot,
      person,
      judged: 1,
      wrong: Number(isWrong),
    })),
  );

export const tallyOf = (many: Iterable<One>): Tally => summed(Array.from(many).flatMap(tallyOfOne));

export const tallied = (tally: Tally, one: One): Tally => merged(tally, tallyOfOne(one));

export const merged = (a: Tally, b: Tally): Tally => summed([...a, ...b]);

function summed(rows: readonly TallyRow[]): Tally {
  const sums = new Map<string, TallyRow>();
  for (const row of rows) {
    const key = JSON.stringify([spotKey(row.spot), row.person]);
    const { judged, wrong } = sums.get(key) ?? { judged: 0, wrong: 0 };
    sums.set(key, { ...row, judged: judged + row.judged, wrong: wrong + row.wrong });
  }
  // By code units, the same in every language; no key comes twice.
  return [...sums].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, row]) => row);
}
