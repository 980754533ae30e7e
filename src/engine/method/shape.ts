/**
 * How an order falls apart: into parts that follow one another (series), parts that have nothing to do
 * with one another (parallel), and tangles that are neither. O(size^2) a level of nesting.
 */
import { addBits, hasBit, noBits, type Bits } from './bits.ts';
import { restrict, type PartialOrder } from './partial-order.ts';

export type Shape =
  | { readonly kind: 'step'; readonly step: number }
  | { readonly kind: 'series' | 'parallel'; readonly parts: readonly Shape[] }
  | { readonly kind: 'tangle'; readonly steps: readonly number[]; readonly order: PartialOrder };

/** Steps are numbered as in `order`; `steps` names a tangle's own numbering. */
export const shapeOf = (order: PartialOrder): Shape => shapeAmong(order, [...order.before.keys()]);

function shapeAmong(order: PartialOrder, steps: readonly number[]): Shape {
  if (steps.length === 1) return { kind: 'step', step: steps[0]! };
  const bound = steps.map((step) => {
    const others = noBits(order.size);
    addBits(others, order.before[step]!);
    addBits(others, order.after[step]!);
    return others;
  });
  const inParallel = components(steps, bound, true);
  if (inParallel.length !== 1) {
    return { kind: 'parallel', parts: inParallel.map((part) => shapeAmong(order, part)) };
  }
  const inSeries = components(steps, bound, false);
  if (inSeries.length === 1) return { kind: 'tangle', steps, order: restrict(order, steps) };
  const parts = inSeries.toSorted(([a], [b]) => (hasBit(order.after[a!]!, b!) ? -1 : 1));
  return { kind: 'series', parts: parts.map((part) => shapeAmong(order, part)) };
}

/** The steps that hang together, by pairs that are bound to each other or by pairs that are not. */
function components(
  steps: readonly number[],
  bound: readonly Bits[],
  linked: boolean,
): readonly (readonly number[])[] {
  const found: number[][] = [];
  const rest = new Set(steps.keys());
  for (const start of rest) {
    rest.delete(start);
    const part = [start];
    for (const index of part) {
      for (const other of rest) {
        if (hasBit(bound[index]!, steps[other]!) !== linked) continue;
        rest.delete(other);
        part.push(other);
      }
    }
    found.push(part.map((index) => steps[index]!));
  }
  return found;
}
