import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isCorrectOrder } from '#engine/method/partial-order.ts';
import { orderSampler, sampleOrder, type Draw } from '#engine/method/sample-order.ts';
import { below, randomFrom } from '#engine/random.ts';
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

function seeded(seed: number): Draw {
  const random = randomFrom(seed);
  return (count) => below(random, count);
}

function samplerOf(stated: StatedOrder, limit?: number) {
  const sampler = orderSampler(orderOf(stated), limit);
  if (!sampler.ok) throw new Error(sampler.error.code);
  return sampler.value;
}

describe('truth', () => {
  // Pearson's statistic against the 99.9 % point of chi-square, that by Wilson and Hilferty 1931.
  it.each([
    ['N', bound(antichain(4), [0, 2], [1, 2], [1, 3])],
    ['zigzag of 6', zigzag(6)],
    ['grid of 2 x 5', times(chain(2), chain(5))],
    ['chains of 3 and 4', beside(chain(3), chain(4))],
    ['antichain of 5', antichain(5)],
  ])('20,000 draws of the %s are spread as evenly as chance spreads them', (_name, stated) => {
    const sampler = samplerOf(stated);
    const draw = seeded(2026);
    const draws = 20_000;
    const seen = new Map(everyOrder(stated).map((order) => [order.join(' '), 0]));
    for (let i = 0; i < draws; i += 1) {
      const key = sampler(draw).join(' ');
      seen.set(key, seen.get(key)! + 1);
    }
    const expected = draws / seen.size;
    const statistic = [...seen.values()].reduce(
      (sum, times) => sum + (times - expected) ** 2 / expected,
      0,
    );
    const spread = 2 / (9 * (seen.size - 1));
    const limit = (seen.size - 1) * (1 - spread + 3.0902 * Math.sqrt(spread)) ** 3;
    expect(statistic).toBeLessThan(limit);
  });

  it('a tangle with more ideals than the limit is refused', () => {
    expect(orderSampler(orderOf(zigzag(10)), 143)).toEqual({
      ok: false,
      error: { code: 'TOO_MANY_IDEALS', limit: 143 },
    });
    expect(isCorrectOrder(orderOf(zigzag(10)), samplerOf(zigzag(10), 144)(seeded(1)))).toBe(true);
  });

  it('a draw that is not below what was asked is refused', () => {
    expect(() => sampleOrder(orderOf(zigzag(6)), (below) => below)).toThrow('not below');
  });
});

describe('laws', () => {
  it('each correct order has exactly the same chance, and no other has any', () => {
    fc.assert(
      fc.property(anyOrder(5), (stated) => {
        const orders = everyOrder(stated);
        const chances = chancesOf(samplerOf(stated));
        expect([...chances.keys()].sort()).toEqual(orders.map((order) => order.join(' ')).sort());
        for (const chance of chances.values()) expect(chance).toBeCloseTo(1 / orders.length, 12);
      }),
    );
  });

  it('the same seed draws the same order, and it is correct', () => {
    fc.assert(
      fc.property(anyOrder(14), fc.integer(), (stated, seed) => {
        const order = orderOf(stated);
        const drawn = sampleOrder(order, seeded(seed));
        expect(drawn).toEqual(sampleOrder(order, seeded(seed)));
        expect(drawn.ok && isCorrectOrder(order, drawn.value)).toBe(true);
      }),
    );
  });
});

/** Follows every way that the draws can fall. */
function chancesOf(sampler: (draw: Draw) => readonly number[]): ReadonlyMap<string, number> {
  const chances = new Map<string, number>();
  const waysToFollow: (readonly bigint[])[] = [[]];
  for (const way of waysToFollow) {
    let chance = 1;
    let turn = 0;
    const drawn: bigint[] = [];
    const key = sampler((below) => {
      const number = way[turn] ?? 0n;
      if (turn >= way.length) {
        for (let other = 1n; other < below; other += 1n) waysToFollow.push([...drawn, other]);
      }
      turn += 1;
      drawn.push(number);
      chance /= Number(below);
      return number;
    }).join(' ');
    chances.set(key, (chances.get(key) ?? 0) + chance);
  }
  return chances;
}
