/**
 * Puts the items of a row as near as can be to where each would like to stand, in their order, apart by
 * at least what they need, and between two ends: least squares, exactly. Without the room they need the
 * problem is an isotonic regression, which pooling neighbours that stand in each other's way solves in
 * O(items); cut off at its ends it stays the best one.
 *
 * M. Ayer et al., "An empirical distribution function for sampling with incomplete information",
 * Annals of Mathematical Statistics 26, 1955 (from memory).
 */
export type Wish = {
  /** Of its middle. */
  readonly at: number;
  readonly weight: number;
  /** From the middle of the item before it, or from the left end, to its own. */
  readonly room: number;
};

/** `rest` is the room from the last middle to the right end. Never leaves by the left end. */
export function lineUpRow(wishes: readonly Wish[], width: number, rest: number): readonly number[] {
  let taken = 0;
  const rooms = wishes.map(({ room }) => (taken += room));
  const pools: { sum: number; weight: number; count: number }[] = [];
  for (const [index, { at, weight }] of wishes.entries()) {
    let pool = { sum: (at - rooms[index]!) * weight, weight, count: 1 };
    for (
      let last = pools.at(-1);
      last && last.sum / last.weight > pool.sum / pool.weight;
      last = pools.at(-1)
    ) {
      pools.pop();
      pool = {
        sum: last.sum + pool.sum,
        weight: last.weight + pool.weight,
        count: last.count + pool.count,
      };
    }
    pools.push(pool);
  }
  const slack = Math.max(0, width - taken - rest);
  const free = pools.flatMap(({ sum, weight, count }) =>
    Array<number>(count).fill(Math.min(slack, Math.max(0, sum / weight))),
  );
  return free.map((value, index) => value + rooms[index]!);
}
