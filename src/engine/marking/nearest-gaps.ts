/**
 * Where the steps lifted out of an attempt go back, so that they pass as few standing steps as possible.
 * The standing steps keep their order; a gap is the number of them that come before. A step may stand
 * from its lowest gap, after its last standing predecessor, to its highest, before its first standing
 * successor; and of two lifted steps that are ordered, the first may not stand in a later gap. This is
 * isotonic regression in L1 on a partial order (Q. F. Stout, "Isotonic regression via partitioning",
 * Algorithmica 66, 2013), and what lifting leaves of it is simple:
 *
 * - The standing steps are a heaviest antichain of the inverted pairs, so each lifted step is inverted
 *   with one of them, or it would stand too. So it was either before its lowest gap (early) or after its
 *   highest (late), and moves at least to that bound, one place or more.
 * - The bounds grow along the order. With every step at its bound, only a late x that must precede an
 *   early y can stand in a later gap than it: a conflict.
 * - For each threshold t, say which steps stand in gap t or later. A late x with its bound at t or later
 *   pays 1 if it does not, an early y with its bound before t pays 1 if it does, and where x does, y
 *   must: of each conflict, one pays. The places moved beyond the bounds are the sum of these payments.
 *   The covers with the most early steps are nested from one threshold to the next, so that together
 *   they are gaps, and each payment is least at once. All other constraints follow: the bounds, as no
 *   conflict reaches beyond them, and the order among the rest, as at the least sum each step is as near
 *   to its own bound as its conflicts allow.
 *
 * O(steps^2) to find the conflicts, usually none, and then a cover between each two neighbouring bounds
 * that occur in them. Of equally near ways it is the one with the latest gaps.
 */
import { precedes, type Pair, type PartialOrder } from '#engine/method/partial-order.ts';
import { lightestCover } from './lightest-cover.ts';

export type Move = {
  readonly step: number;
  /** Its gap in the attempt. */
  readonly from: number;
  readonly to: number;
};

type Conflict = readonly [late: Move, early: Move];

/** For every step that does not stand, in the order of the attempt. */
export function nearestGaps(
  order: PartialOrder,
  attempt: readonly number[],
  standing: readonly number[],
): readonly Move[] {
  const moves = movesToBounds(order, attempt, standing);
  const conflicts: Conflict[] = [];
  for (const late of moves) {
    if (late.from < late.to) continue;
    for (const early of moves) {
      if (early.from > early.to || late.to <= early.to) continue;
      if (precedes(order, late.step, early.step)) conflicts.push([late, early]);
    }
  }
  if (conflicts.length === 0) return moves;
  const gaps = settle(order, conflicts);
  return moves.map((move) => ({ ...move, to: gaps.get(move) ?? move.to }));
}

function movesToBounds(
  order: PartialOrder,
  attempt: readonly number[],
  standing: readonly number[],
): readonly Move[] {
  const moves: Move[] = [];
  let from = 0;
  for (const step of attempt) {
    if (step === standing[from]) {
      from += 1;
      continue;
    }
    let lowest = standing.length;
    while (lowest > 0 && !precedes(order, standing[lowest - 1]!, step)) lowest -= 1;
    let highest = lowest;
    while (highest < standing.length && !precedes(order, step, standing[highest]!)) highest += 1;
    moves.push({ step, from, to: Math.min(Math.max(from, lowest), highest) });
  }
  return moves;
}

function settle(order: PartialOrder, conflicts: readonly Conflict[]): ReadonlyMap<Move, number> {
  const gaps = new Map(conflicts.flat().map((move) => [move, move.to]));
  const bounds = [...new Set(gaps.values())].sort((a, b) => a - b);
  const ones = Array<number>(order.size).fill(1);
  bounds.slice(1).forEach((threshold, index) => {
    const below = bounds[index]!;
    const open = conflicts.filter(([late, early]) => late.to >= threshold && early.to <= below);
    const pays = lightestCover(
      open.map(([late, early]): Pair => [late.step, early.step]),
      ones,
    );
    for (const [late, early] of open) {
      if (pays.firsts[late.step]) gaps.set(late, Math.min(gaps.get(late)!, below));
      if (pays.seconds[early.step]) gaps.set(early, threshold);
    }
  });
  return gaps;
}
