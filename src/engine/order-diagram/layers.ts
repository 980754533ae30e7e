/**
 * Steps in layers, so that each stands below all that must come before it: as high as it can (the
 * longest path to it), and then, where more lines leave it than reach it, as low as it can, which makes
 * lines shorter. O(steps^2 / 32 + pairs).
 *
 * Longest-path layering: P. Eades, K. Sugiyama, "How to draw a directed graph", Journal of Information
 * Processing 13(4), 1990 (from memory).
 */
import { type Pair, type PartialOrder, predecessors } from '#engine/method/partial-order.ts';

/** The layer of each step, the highest 0; no layer stays empty. */
export function layersOf(order: PartialOrder, pairs: readonly Pair[]): readonly number[] {
  const before = Map.groupBy(pairs, ([, second]) => second);
  const after = Map.groupBy(pairs, ([first]) => first);
  const sorted = [...Array(order.size).keys()].sort(
    (a, b) => predecessors(order, a).length - predecessors(order, b).length || a - b,
  );
  const layers = Array<number>(order.size).fill(0);
  for (const step of sorted) {
    const above = (before.get(step) ?? []).map(([first]) => layers[first]!);
    layers[step] = Math.max(-1, ...above) + 1;
  }
  for (const step of sorted.toReversed()) {
    const below = (after.get(step) ?? []).map(([, second]) => layers[second]!);
    if (below.length > (before.get(step)?.length ?? 0)) layers[step] = Math.min(...below) - 1;
  }
  const used = [...new Set(layers)].sort((a, b) => a - b);
  return layers.map((layer) => used.indexOf(layer));
}

/**
 * Layers broken into rows of at most so many steps, as even as can be. Nothing in a layer must precede
 * anything else in it, so rows keep the order. Each row follows, from left to right, what stands above it.
 */
export function rowsOf(
  layers: readonly number[],
  pairs: readonly Pair[],
  mostInRow: number,
): readonly (readonly number[])[] {
  const above = Map.groupBy(pairs, ([, second]) => second);
  const sideways = new Map<number, number>();
  return [...Array(Math.max(-1, ...layers) + 1).keys()].flatMap((layer) => {
    const steps = layers.flatMap((one, step) => (one === layer ? [step] : []));
    const leaning = (step: number): number =>
      mean((above.get(step) ?? []).map(([first]) => sideways.get(first)!)) ?? 0.5;
    const lined = steps.toSorted((a, b) => leaning(a) - leaning(b));
    const rows = Math.ceil(lined.length / mostInRow);
    return [...Array(rows).keys()].map((row) => {
      const from = Math.round((row * lined.length) / rows);
      const part = lined.slice(from, Math.round(((row + 1) * lined.length) / rows));
      for (const [at, step] of part.entries()) sideways.set(step, (at + 0.5) / part.length);
      return part;
    });
  });
}

export const mean = (values: readonly number[]): number | undefined =>
  values.length === 0 ? undefined : values.reduce((sum, value) => sum + value, 0) / values.length;
