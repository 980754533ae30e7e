import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countOrders } from '#engine/method/count-orders.ts';
import {
  antichain,
  anyOrder,
  beside,
  bound,
  chain,
  everyOrder,
  orderOf,
  times,
  zigzag,
  type StatedOrder,
} from './orders.ts';

const count = (stated: StatedOrder, limit?: number) => {
  const counted = countOrders(orderOf(stated), limit);
  return counted.ok ? counted.value : counted.error;
};

const boolean = (atoms: number): StatedOrder =>
  Array.from({ length: atoms }, () => chain(2)).reduce(times, chain(1));

const box = (...sides: readonly number[]): StatedOrder => sides.map(chain).reduce(times);

const choose = (n: number, k: number): bigint => {
  let ways = 1n;
  for (let i = 1; i <= k; i += 1) ways = (ways * BigInt(n - k + i)) / BigInt(i);
  return ways;
};

describe('truth', () => {
  it.each([
    // Orders: https://oeis.org/A046873, and 1680384 in SageMath's doctest of BooleanLattice(4).
    // Ideals: the Dedekind numbers, https://oeis.org/A000372.
    ['Boolean lattice of 0 atoms', boolean(0), 1n, 2n],
    ['Boolean lattice of 1 atom', boolean(1), 1n, 3n],
    ['Boolean lattice of 2 atoms', boolean(2), 2n, 6n],
    ['Boolean lattice of 3 atoms', boolean(3), 48n, 20n],
    ['Boolean lattice of 4 atoms', boolean(4), 1680384n, 168n],
    // Orders: Euler's zigzag numbers, https://oeis.org/A000111. Ideals: the Fibonacci numbers.
    ['zigzag of 1', zigzag(1), 1n, 2n],
    ['zigzag of 2', zigzag(2), 1n, 3n],
    ['zigzag of 3', zigzag(3), 2n, 5n],
    ['zigzag of 4', zigzag(4), 5n, 8n],
    ['zigzag of 5', zigzag(5), 16n, 13n],
    ['zigzag of 6', zigzag(6), 61n, 21n],
    ['zigzag of 7', zigzag(7), 272n, 34n],
    ['zigzag of 8', zigzag(8), 1385n, 55n],
    ['zigzag of 9', zigzag(9), 7936n, 89n],
    ['zigzag of 10', zigzag(10), 50521n, 144n],
    // Orders: the Catalan numbers, https://oeis.org/A000108.
    ['grid of 2 x 1', box(2, 1), 1n, 3n],
    ['grid of 2 x 2', box(2, 2), 2n, 6n],
    ['grid of 2 x 3', box(2, 3), 5n, 10n],
    ['grid of 2 x 4', box(2, 4), 14n, 15n],
    ['grid of 2 x 5', box(2, 5), 42n, 21n],
    ['grid of 2 x 6', box(2, 6), 132n, 28n],
    // Orders: J. S. Frame, G. de B. Robinson, R. M. Thrall, "The hook graphs of the symmetric
    // group", Canadian J. Math. 6, 1954; 4 x 4 also https://oeis.org/A039622.
    ['grid of 3 x 3', box(3, 3), 42n, 20n],
    ['grid of 3 x 4', box(3, 4), 462n, 35n],
    ['grid of 3 x 5', box(3, 5), 6006n, 56n],
    ['grid of 4 x 4', box(4, 4), 24024n, 70n],
    // Orders: https://oeis.org/A114714.
    ['box of 2 x 2 x 2', box(2, 2, 2), 48n, 20n],
    ['box of 2 x 2 x 3', box(2, 2, 3), 2452n, 50n],
    // Orders of the N: https://oeis.org/A160371.
    ['N', bound(antichain(4), [0, 2], [1, 2], [1, 3]), 5n, 8n],
    ['diamond', bound(antichain(4), [0, 1], [0, 2], [1, 3], [2, 3]), 2n, 6n],
    ['V', bound(antichain(3), [0, 1], [0, 2]), 2n, 5n],
    // n! and 1; multinomials.
    ['antichain of 5', antichain(5), 120n, 32n],
    ['chain of 5', chain(5), 1n, 6n],
    ['chains of 3 and 4', beside(chain(3), chain(4)), 35n, 20n],
    ['three chains of 2', beside(chain(2), beside(chain(2), chain(2))), 90n, 27n],
    // n! over the product of the subtrees' sizes: D. E. Knuth, The Art of Computer Programming 3,
    // 5.1.4, exercise 20.
    ['tree of 5', bound(antichain(5), [0, 1], [0, 2], [1, 3], [1, 4]), 8n, 11n],
    ['nothing', antichain(0), 1n, 1n],
  ])('%s', (_name, stated, orders, ideals) => {
    expect(count(stated)).toEqual({ steps: stated.size, orders, ideals });
  });

  // SageMath's doctests of mobile posets, after A. Garver, S. Grosser, J. Matherne, A. Morales,
  // "Counting linear extensions of posets with determinants of hook lengths", 2020:
  // https://github.com/sagemath/sage, src/sage/combinat/posets/mobile.py and linear_extensions.py
  it.each([
    ['a ribbon of 6', zigzag(6, (i) => [1, 3].includes(i)), 61n],
    [
      'a ribbon of 9',
      bound(antichain(9), [1, 0], [3, 0], [2, 1], [2, 3], [4, 3], [5, 4], [5, 6], [7, 4], [7, 8]),
      1098n,
    ],
    [
      'a zigzag of 15 and one step after the ninth',
      bound(beside(zigzag(15), chain(1)), [8, 15]),
      21399440939n,
    ],
    ['a mobile of 32', mobileOf32(), 361628701868606400n],
  ])('%s', (_name, stated, orders) => {
    expect(count(stated)).toMatchObject({ orders });
  });

  it('a grid of m x n has C(m + n, n) ideals', () => {
    for (let m = 1; m <= 6; m += 1) {
      for (let n = 1; n <= 6; n += 1) {
        expect(count(box(m, n))).toMatchObject({ ideals: choose(m + n, n) });
      }
    }
  });

  it('what falls apart needs no ideals: 30 free steps between a first and a last', () => {
    const steps = [...Array(30).keys()];
    const stated = bound(
      antichain(32),
      ...steps.flatMap((i): [number, number][] => [
        [30, i],
        [i, 31],
      ]),
    );
    expect(count(stated, 0)).toEqual({
      steps: 32,
      orders: steps.reduce((product, i) => product * BigInt(i + 1), 1n),
      ideals: 2n ** 30n + 2n,
    });
  });

  it('a tangle with more ideals than the limit is refused, and one with as many is not', () => {
    expect(count(zigzag(10), 143)).toEqual({ code: 'TOO_MANY_IDEALS', limit: 143 });
    expect(count(zigzag(10), 144)).toMatchObject({ orders: 50521n });
  });
});

describe('laws', () => {
  it('counts the orders and ideals that there are', () => {
    fc.assert(
      fc.property(anyOrder(7), (stated) => {
        expect(count(stated)).toEqual({
          steps: stated.size,
          orders: BigInt(everyOrder(stated).length),
          ideals: BigInt(everyIdeal(stated).length),
        });
      }),
    );
  });

  it('turning an order upside down changes neither number', () => {
    fc.assert(
      fc.property(anyOrder(10), (stated) => {
        const pairs = stated.pairs.map(([a, b]): [number, number] => [b, a]);
        expect(count({ size: stated.size, pairs })).toEqual(count(stated));
      }),
    );
  });

  it('one more step without constraints can come at any place', () => {
    fc.assert(
      fc.property(anyOrder(9), (stated) => {
        const counted = countOrders(orderOf(stated));
        if (!counted.ok) throw new Error('refused');
        const { steps, orders, ideals } = counted.value;
        expect(count(beside(stated, chain(1)))).toEqual({
          steps: steps + 1,
          orders: orders * BigInt(steps + 1),
          ideals: ideals * 2n,
        });
      }),
    );
  });
});

/** A ribbon of 7 with a Young diagram of 3 + 2 and a double-tailed diamond of 14 hung below it, and a chain of 6 across. */
function mobileOf32(): StatedOrder {
  const ribbon = zigzag(7, (i) => [1, 3].includes(i));
  const young = bound(antichain(5), [1, 0], [2, 1], [4, 3], [3, 0], [4, 1]);
  const tail = chain(6);
  const diamond = bound(beside(beside(tail, antichain(2)), tail), [5, 6], [5, 7], [6, 8], [7, 8]);
  const whole = [young, diamond, chain(6)].reduce(beside, ribbon);
  return bound(whole, [7, 1], [25, 3], [4, 28]);
}

function everyIdeal({ size, pairs }: StatedOrder): readonly number[] {
  return [...Array(2 ** size).keys()].filter((set) =>
    pairs.every(([before, after]) => ((set >> after) & 1) <= ((set >> before) & 1)),
  );
}
