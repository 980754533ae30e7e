/**
 * How far numbers of right answers would wander on other forms: their sd, over persons - 1, times the
 * root of 1 - reliability (H. Gulliksen, "Theory of Mental Tests", 1950, ch. 2, from memory), whatever
 * the reliability was found by. O(persons).
 */

/** In right answers; undefined for fewer than two persons. */
export function errorOfTotals(totals: readonly number[], reliability: number): number | undefined {
  const count = totals.length;
  if (count < 2) return undefined;
  const sum = totals.reduce((so, total) => so + total, 0);
  const squares = totals.reduce((so, total) => so + total * total, 0);
  const variance = (count * squares - sum * sum) / (count * (count - 1));
  return Math.sqrt(variance * (1 - reliability));
}
