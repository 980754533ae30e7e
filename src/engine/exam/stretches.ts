/** A stretch of time, `to` not included. */
export type Stretch = { readonly from: number; readonly to: number };

/** How long they are together, what several cover counted once. O(n log n). */
export function milliseconds(stretches: readonly Stretch[]): number {
  let sum = 0;
  let end = -Infinity;
  for (const { from, to } of stretches.toSorted((a, b) => a.from - b.from)) {
    sum += Math.max(0, to - Math.max(from, end));
    end = Math.max(end, to);
  }
  return sum;
}
