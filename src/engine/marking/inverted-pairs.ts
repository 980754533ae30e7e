/**
 * What an attempt got the wrong way round: every pair that the order binds and the attempt inverts. Such
 * pairs are in the order, restricted to what was placed, and in the attempt read backwards; they are the
 * intersection of two strict partial orders, and so one themselves. O(steps^2).
 */
import { hasBit } from '#engine/method/bits.ts';
import type { Pair, PartialOrder } from '#engine/method/partial-order.ts';

/** By place in the attempt of the step that came too late, then of the one that came too early. */
export function invertedPairs(order: PartialOrder, attempt: readonly number[]): readonly Pair[] {
  const pairs: Pair[] = [];
  for (let place = 1; place < attempt.length; place += 1) {
    const step = attempt[place]!;
    const followers = order.after[step]!;
    for (let earlier = 0; earlier < place; earlier += 1) {
      if (hasBit(followers, attempt[earlier]!)) pairs.push([step, attempt[earlier]!]);
    }
  }
  return pairs;
}
