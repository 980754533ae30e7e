import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { heaviestAntichain } from '#engine/marking/antichain.ts';
import {
  precedes,
  successors,
  type Pair,
  type PartialOrder,
} from '#engine/method/partial-order.ts';
import { antichain, anyOrder, bound, chain, orderOf, times } from '../method/orders.ts';

function heaviestOf(order: PartialOrder, weights: readonly number[]): readonly number[] {
  const steps = [...order.after.keys()];
  const pairs = steps.flatMap((step) => successors(order, step).map((next): Pair => [step, next]));
  return heaviestAntichain(steps, pairs, weights);
}

const ones = (size: number) => Array<number>(size).fill(1);

describe('truth', () => {
  it('the widest row of a Boolean lattice is its middle (Sperner 1928)', () => {
    // E. Sperner, "Ein Satz über Untermengen einer endlichen Menge", Math. Zeitschrift 27, 1928.
    const lattice = (atoms: number) =>
      orderOf(Array.from({ length: atoms }, () => chain(2)).reduce(times, chain(1)));
    expect(heaviestOf(lattice(4), ones(16))).toHaveLength(6);
    expect(heaviestOf(lattice(5), ones(32))).toHaveLength(10);
    expect(heaviestOf(lattice(6), ones(64))).toHaveLength(20);
  });

  it('of a chain it is the heaviest step, and the first of those as heavy', () => {
    expect(heaviestOf(orderOf(chain(5)), [1, 3, 2, 3, 1])).toEqual([1]);
    expect(heaviestOf(orderOf(chain(5)), ones(5))).toEqual([0]);
  });

  it('of an N whose ends weigh more it is the ends', () => {
    const n = orderOf(bound(antichain(4), [0, 2], [1, 2], [1, 3]));
    expect(heaviestOf(n, [3, 1, 1, 3])).toEqual([0, 3]);
    expect(heaviestOf(n, ones(4))).toEqual([0, 1]);
  });
});

describe('laws', () => {
  const weighted = anyOrder(8).chain((stated) =>
    fc.tuple(
      fc.constant(orderOf(stated)),
      fc.array(fc.integer({ min: 1, max: 4 }), { minLength: stated.size, maxLength: stated.size }),
    ),
  );

  it('none is heavier, and each as heavy lies nowhere below it', () => {
    fc.assert(
      fc.property(weighted, ([order, weights]) => {
        const weigh = (steps: readonly number[]) =>
          steps.reduce((sum, step) => sum + weights[step]!, 0);
        const found = heaviestOf(order, weights);
        const all = everyAntichain(order);
        expect(all).toContainEqual(found);
        expect(weigh(found)).toBe(Math.max(...all.map(weigh)));
        for (const other of all.filter((steps) => weigh(steps) === weigh(found))) {
          for (const step of other) {
            expect(found.some((low) => low === step || precedes(order, low, step))).toBe(true);
          }
        }
      }),
      { numRuns: 200 },
    );
  });
});

const everyAntichain = (order: PartialOrder): readonly (readonly number[])[] =>
  [...Array(2 ** order.size).keys()]
    .map((set) => [...Array(order.size).keys()].filter((step) => ((set >> step) & 1) === 1))
    .filter((steps) => steps.every((a) => steps.every((b) => !precedes(order, a, b))));
