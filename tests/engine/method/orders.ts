import fc from 'fast-check';
import { partialOrder, type Pair, type PartialOrder } from '#engine/method/partial-order.ts';

export type StatedOrder = { readonly size: number; readonly pairs: readonly Pair[] };

export function orderOf({ size, pairs }: StatedOrder): PartialOrder {
  const order = partialOrder(size, pairs);
  if (!order.ok) throw new Error(`circular: ${order.error.cycle.join(' < ')}`);
  return order.value;
}

/** From few pairs to many, numbered in no particular order. */
export const anyOrder = (maximum = 7): fc.Arbitrary<StatedOrder> =>
  fc
    .tuple(fc.integer({ min: 0, max: maximum }), fc.integer({ min: 1, max: 6 }))
    .chain(([size, scarcity]) => {
      const steps = [...Array(size).keys()];
      return fc.record({
        names: fc.shuffledSubarray(steps, { minLength: size }),
        dice: fc.array(fc.nat(scarcity), { minLength: size * size, maxLength: size * size }),
      });
    })
    .map(({ names, dice }) => ({
      size: names.length,
      pairs: names.flatMap((before, i) =>
        names
          .slice(i + 1)
          .flatMap((after, j): Pair[] =>
            dice[i * names.length + j] === 0 ? [[before, after]] : [],
          ),
      ),
    }));

/** Every correct order, one step after another, from the stated pairs alone. */
export function everyOrder({ size, pairs }: StatedOrder): readonly (readonly number[])[] {
  const found: (readonly number[])[] = [];
  const extend = (done: readonly number[]): void => {
    if (done.length === size) found.push(done);
    for (let step = 0; step < size; step += 1) {
      if (done.includes(step)) continue;
      if (pairs.some(([before, after]) => after === step && !done.includes(before))) continue;
      extend([...done, step]);
    }
  };
  extend([]);
  return found;
}

export const chain = (size: number): StatedOrder => ({
  size,
  pairs: [...Array(Math.max(0, size - 1)).keys()].map((i): Pair => [i, i + 1]),
});

export const antichain = (size: number): StatedOrder => ({ size, pairs: [] });

/** Side by side, the second numbered on from the first. */
export const beside = (a: StatedOrder, b: StatedOrder): StatedOrder => ({
  size: a.size + b.size,
  pairs: [...a.pairs, ...b.pairs.map(([x, y]): Pair => [x + a.size, y + a.size])],
});

/** Pairs of the one and the other, ordered when both coordinates are: a grid of chains. */
export const times = (a: StatedOrder, b: StatedOrder): StatedOrder => ({
  size: a.size * b.size,
  pairs: [
    ...a.pairs.flatMap(([x, y]) =>
      [...Array(b.size).keys()].map((k): Pair => [x * b.size + k, y * b.size + k]),
    ),
    ...b.pairs.flatMap(([x, y]) =>
      [...Array(a.size).keys()].map((k): Pair => [k * b.size + x, k * b.size + y]),
    ),
  ],
});

/** 0 < 1 > 2 < 3 > ..., but falling after each number of `falls` when given. */
export const zigzag = (size: number, falls = (i: number): boolean => i % 2 === 1): StatedOrder => ({
  size,
  pairs: [...Array(Math.max(0, size - 1)).keys()].map((i): Pair =>
    falls(i) ? [i + 1, i] : [i, i + 1],
  ),
});

/** With more pairs between them, once both are numbered on. */
export const bound = (order: StatedOrder, ...pairs: readonly Pair[]): StatedOrder => ({
  size: order.size,
  pairs: [...order.pairs, ...pairs],
});
