import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { invertedPairs } from '#engine/marking/inverted-pairs.ts';
import { liftOut } from '#engine/marking/lift-out.ts';
import { isCorrectOrder, precedes, type Pair } from '#engine/method/partial-order.ts';
import {
  antichain,
  beside,
  bound,
  chain,
  everyOrder,
  orderOf,
  type StatedOrder,
} from '../method/orders.ts';
import { anyAttempt, crossedAttempt, type AnyAttempt } from './attempts.ts';

const ones = (size: number) => Array<number>(size).fill(1);

const lift = ({ stated, attempt, weights }: AnyAttempt) =>
  liftOut({ order: orderOf(stated), attempt, weights, stated: stated.pairs });

const liftFrom = (stated: StatedOrder, attempt: readonly number[]) =>
  lift({ stated, attempt, weights: ones(stated.size) });

const pairs = (...list: readonly Pair[]) => list;

describe('truth', () => {
  // Against a chain the inverted pairs are Kendall's distance, and with equal weights the cost is
  // Ulam's: the length less the longest increasing subsequence. Counted by hand.
  it.each([
    [[2, 1, 3, 4, 5], 1, 1],
    [[5, 1, 2, 3, 4], 4, 1],
    [[2, 1, 4, 3, 5], 2, 2],
    [[2, 4, 1, 3], 3, 2],
    [[5, 4, 3, 2, 1], 10, 4],
    [[8, 7, 6, 5, 4, 3, 2, 1], 28, 7],
  ])('%j is %i inversions and a cost of %i away from a chain', (permutation, kendall, ulam) => {
    const attempt = permutation.map((number) => number - 1);
    expect(invertedPairs(orderOf(chain(attempt.length)), attempt).length).toBe(kendall);
    expect(liftFrom(chain(attempt.length), attempt).cost).toBe(ulam);
  });

  // How many of all orders of 4, 5 and 6 lie 0, 1, 2... inversions away: https://oeis.org/A008302.
  it.each([
    [4, [1, 3, 5, 6, 5, 3, 1]],
    [5, [1, 4, 9, 15, 20, 22, 20, 15, 9, 4, 1]],
    [6, [1, 5, 14, 29, 49, 71, 90, 101, 101, 90, 71, 49, 29, 14, 5, 1]],
  ])('of all orders of %i steps, so many are each number of inversions away', (size, published) => {
    const counts = Array<number>(published.length).fill(0);
    for (const attempt of everyOrder(antichain(size))) {
      counts[invertedPairs(orderOf(chain(size)), attempt).length]! += 1;
    }
    expect(counts).toEqual(published);
  });

  // Of how many the longest increasing part has 1, 2... steps at most: https://oeis.org/A047887.
  it.each([
    [4, [1, 14, 23, 24]],
    [5, [1, 42, 103, 119, 120]],
    [6, [1, 132, 513, 694, 719, 720]],
  ])('of all orders of %i steps, so many leave each number standing at most', (size, published) => {
    const standing = everyOrder(antichain(size)).map((attempt) => {
      const { cost } = liftFrom(chain(size), attempt);
      return size - cost;
    });
    const most = published.map((_, place) => standing.filter((left) => left <= place + 1).length);
    expect(most).toEqual(published);
  });

  it('one step too early is lifted alone and goes back the whole way', () => {
    expect(liftFrom(chain(5), [4, 0, 1, 2, 3])).toEqual({
      lifted: [{ step: 4, places: 4, direction: 'early', broken: [[3, 4]] }],
      standing: [0, 1, 2, 3],
      nearestOrder: [0, 1, 2, 3, 4],
      cost: 1,
    });
  });

  it('a step that broke no stated pair directly names the pairs that follow', () => {
    expect(liftFrom(chain(3), [2, 0]).lifted).toEqual([
      { step: 2, places: 1, direction: 'early', broken: [[0, 2]] },
    ]);
  });

  it('a pair that was stated twice is broken once', () => {
    const stated = bound(chain(2), [0, 1]);
    expect(liftFrom(stated, [1, 0]).lifted[0]?.broken).toEqual([[0, 1]]);
  });

  it('a lighter step is lifted though it was placed too late', () => {
    const { lifted } = lift({ stated: chain(2), attempt: [1, 0], weights: [1, 3] });
    expect(lifted).toEqual([{ step: 0, places: 1, direction: 'late', broken: [[0, 1]] }]);
  });

  it('steps left out stand as soon as they may, and cost nothing here', () => {
    expect(liftFrom(bound(beside(chain(4), chain(2)), [0, 4]), [1, 3, 5])).toEqual({
      lifted: [],
      standing: [1, 3, 5],
      nearestOrder: [0, 4, 1, 2, 3, 5],
      cost: 0,
    });
  });

  it('a late step that must precede an early one meets it, and the early one gives way', () => {
    // 0 (early) must follow 2; 1 (late) must precede 4 and 0; 2, 3 and 4 are heavy and stand.
    const stated = bound(antichain(5), [2, 0], [1, 4], [1, 0]);
    expect(lift({ stated, attempt: [0, 2, 3, 4, 1], weights: [1, 1, 9, 9, 9] })).toEqual({
      lifted: [
        { step: 0, places: 2, direction: 'early', broken: pairs([2, 0], [1, 0]) },
        { step: 1, places: 1, direction: 'late', broken: pairs([1, 4], [1, 0]) },
      ],
      standing: [2, 3, 4],
      nearestOrder: [2, 3, 1, 0, 4],
      cost: 2,
    });
  });

  it('a late step that would make three early ones give way goes back farther itself', () => {
    // 5, 6 and 7 (early) must follow 0; 8 (late) must precede 4 and all three, 9 (late) 2 and 5.
    const afterFirst = pairs([0, 5], [0, 6], [0, 7]);
    const beforeThem = pairs([8, 4], [8, 5], [8, 6], [8, 7], [9, 2], [9, 5]);
    const stated = bound(beside(chain(5), antichain(5)), ...afterFirst, ...beforeThem);
    const weights = [9, 9, 9, 9, 9, 1, 1, 1, 1, 1];
    const { lifted, nearestOrder } = lift({
      stated,
      attempt: [5, 6, 7, 0, 1, 2, 3, 4, 8, 9],
      weights,
    });
    expect(lifted.map(({ step, places }) => [step, places])).toEqual([
      [5, 2],
      [6, 1],
      [7, 1],
      [8, 4],
      [9, 3],
    ]);
    expect(nearestOrder).toEqual([0, 8, 6, 7, 1, 9, 5, 2, 3, 4]);
  });

  it.each([
    ['a step placed twice', [0, 1, 0], ones(3), 'step 0 is placed twice'],
    ['a step that does not exist', [0, 3], ones(3), '3 is no step below 3'],
    ['a weight of nothing', [0], [1, 0, 1], 'a weight is whole and above 0, not 0'],
    ['half a weight', [0], [1, 0.5, 1], 'a weight is whole and above 0, not 0.5'],
    ['too few weights', [0], [1, 1], '3 steps need as many weights, not 2'],
  ])('%s is refused', (_name, attempt, weights, message) => {
    expect(() => lift({ stated: chain(3), attempt, weights })).toThrow(message);
  });
});

describe('laws', () => {
  const attempts = fc.oneof(anyAttempt(7), crossedAttempt);

  it('costs the least of all ways to reach a correct order', () => {
    fc.assert(
      fc.property(attempts, (given) => {
        const { attempt, weights } = given;
        const total = attempt.reduce((sum, step) => sum + weights[step]!, 0);
        const kept = ordersOfPlaced(given).map((order) => heaviestCommon(order, attempt, weights));
        expect(lift(given).cost).toBe(total - Math.max(...kept));
      }),
      { numRuns: 200 },
    );
  });

  it('moves the lifted steps past the fewest standing ones', () => {
    fc.assert(
      fc.property(attempts, (given) => {
        const { lifted, standing, nearestOrder } = lift(given);
        const from = gapsIn(given.attempt, standing);
        const moved = (order: readonly number[]) => {
          const to = gapsIn(order, standing);
          return lifted.reduce(
            (sum, { step }) => sum + Math.abs(to.get(step)! - from.get(step)!),
            0,
          );
        };
        const places = lifted.reduce((sum, { places }) => sum + places, 0);
        const ways = ordersOfPlaced(given).filter((order) =>
          standing.every(
            (step, i) => i === 0 || order.indexOf(standing[i - 1]!) < order.indexOf(step),
          ),
        );
        expect(places).toBe(Math.min(...ways.map(moved)));
        expect(moved(nearestOrder)).toBe(places);
      }),
      { numRuns: 300 },
    );
  });

  it('the nearest order is correct, and the standing steps keep their order in it', () => {
    fc.assert(
      fc.property(fc.oneof(anyAttempt(12), crossedAttempt), (given) => {
        const { standing, nearestOrder } = lift(given);
        expect(isCorrectOrder(orderOf(given.stated), nearestOrder)).toBe(true);
        expect(nearestOrder.filter((step) => standing.includes(step))).toEqual(standing);
        expect(given.attempt.filter((step) => standing.includes(step))).toEqual(standing);
      }),
    );
  });

  it('each lifted step moves a place or more, one way, past a pair that it broke', () => {
    fc.assert(
      fc.property(fc.oneof(anyAttempt(12), crossedAttempt), (given) => {
        const order = orderOf(given.stated);
        const { lifted, standing, nearestOrder } = lift(given);
        expect([...standing, ...lifted.map(({ step }) => step)].sort()).toEqual(
          [...given.attempt].sort(),
        );
        const from = gapsIn(given.attempt, standing);
        const to = gapsIn(nearestOrder, standing);
        for (const { step, places, direction, broken } of lifted) {
          expect(places).toBeGreaterThanOrEqual(1);
          expect(to.get(step)! - from.get(step)!).toBe(direction === 'early' ? places : -places);
          expect(broken.length).toBeGreaterThan(0);
          for (const pair of broken) {
            expect(pair).toContain(step);
            expect(precedes(order, ...pair)).toBe(true);
            expect(given.attempt.indexOf(pair[0])).toBeGreaterThan(given.attempt.indexOf(pair[1]));
          }
          const direct = given.stated.pairs.filter(
            (pair) => pair.includes(step) && isInverted(given.attempt, pair),
          );
          if (direct.length > 0)
            expect(new Set(broken.map(String))).toEqual(new Set(direct.map(String)));
        }
      }),
    );
  });

  it('lifts nothing from a correct order, whole or with steps left out', () => {
    fc.assert(
      fc.property(anyAttempt(6), ({ stated, attempt, weights }) => {
        const placed = new Set(attempt);
        for (const correct of everyOrder(stated).slice(0, 40)) {
          const part = correct.filter((step) => placed.has(step));
          const whole = lift({ stated, attempt: correct, weights });
          expect(whole).toEqual({ lifted: [], standing: correct, nearestOrder: correct, cost: 0 });
          expect(lift({ stated, attempt: part, weights })).toMatchObject({
            lifted: [],
            standing: part,
          });
        }
      }),
    );
  });

  it('two neighbours swapped against the order: the lighter is lifted, or the early one', () => {
    fc.assert(
      fc.property(anyAttempt(6), ({ stated, weights }) => {
        const order = orderOf(stated);
        for (const correct of everyOrder(stated).slice(0, 40)) {
          for (let i = 0; i + 1 < stated.size; i += 1) {
            const [first, second] = [correct[i]!, correct[i + 1]!];
            if (!precedes(order, first, second)) continue;
            const attempt = correct.with(i, second).with(i + 1, first);
            const late = weights[first]! < weights[second]!;
            expect(lift({ stated, attempt, weights })).toEqual({
              lifted: [
                {
                  step: late ? first : second,
                  places: 1,
                  direction: late ? 'late' : 'early',
                  broken: [[first, second]],
                },
              ],
              standing: attempt.filter((step) => step !== (late ? first : second)),
              nearestOrder: correct,
              cost: weights[late ? first : second],
            });
          }
        }
      }),
    );
  });

  it('what is lifted does not depend on how the steps are numbered', () => {
    const renamed = fc.oneof(anyAttempt(9), crossedAttempt).chain((given) =>
      fc.tuple(
        fc.constant(given),
        fc.shuffledSubarray([...Array(given.stated.size).keys()], {
          minLength: given.stated.size,
        }),
      ),
    );
    fc.assert(
      fc.property(renamed, ([given, names]) => {
        const { lifted, standing, cost } = lift(given);
        const name = (step: number) => names[step]!;
        const again = lift({
          stated: {
            size: given.stated.size,
            pairs: given.stated.pairs.map(([a, b]): Pair => [name(a), name(b)]),
          },
          attempt: given.attempt.map(name),
          weights: given.weights.map((_, step) => given.weights[names.indexOf(step)]!),
        });
        const spot = (step: number, places: number, direction: string) => ({
          step,
          places,
          direction,
        });
        expect(again.standing).toEqual(standing.map(name));
        expect(again.cost).toBe(cost);
        expect(again.lifted.map((l) => spot(l.step, l.places, l.direction))).toEqual(
          lifted.map((l) => spot(name(l.step), l.places, l.direction)),
        );
      }),
    );
  });

  it('inversions and footrule keep the bounds of Diaconis and Graham', () => {
    // P. Diaconis, R. L. Graham, "Spearman's footrule as a measure of disarray", J. Royal
    // Statistical Society B 39, 1977: I + T <= D <= 2 I.
    const permutation = fc
      .integer({ min: 1, max: 9 })
      .chain((size) => fc.shuffledSubarray([...Array(size).keys()], { minLength: size }));
    fc.assert(
      fc.property(permutation, (attempt) => {
        const kendall = invertedPairs(orderOf(chain(attempt.length)), attempt).length;
        const footrule = attempt.reduce((sum, step, place) => sum + Math.abs(step - place), 0);
        expect(kendall + transpositions(attempt)).toBeLessThanOrEqual(footrule);
        expect(footrule).toBeLessThanOrEqual(2 * kendall);
      }),
    );
  });
});

const isInverted = (attempt: readonly number[], [before, after]: Pair): boolean =>
  attempt.includes(after) && attempt.indexOf(before) > attempt.indexOf(after);

/** All correct orders, of the steps that were placed. */
const ordersOfPlaced = ({ stated, attempt }: AnyAttempt): readonly (readonly number[])[] =>
  everyOrder(stated).map((order) => order.filter((step) => attempt.includes(step)));

function heaviestCommon(
  a: readonly number[],
  b: readonly number[],
  weights: readonly number[],
): number {
  let row = ones(b.length + 1).fill(0);
  for (const step of a) {
    const next = [0];
    b.forEach((other, j) => {
      const together = step === other ? row[j]! + weights[step]! : 0;
      next.push(Math.max(row[j + 1]!, next[j]!, together));
    });
    row = next;
  }
  return row.at(-1)!;
}

/** For each step that does not stand, how many standing ones come before. */
function gapsIn(
  sequence: readonly number[],
  standing: readonly number[],
): ReadonlyMap<number, number> {
  let gap = 0;
  return new Map(
    sequence.flatMap((step): [number, number][] => {
      if (!standing.includes(step)) return [[step, gap]];
      gap += 1;
      return [];
    }),
  );
}

/** Cayley's distance: the length less the number of cycles. */
function transpositions(permutation: readonly number[]): number {
  const seen = new Set<number>();
  let cycles = 0;
  for (const start of permutation) {
    if (!seen.has(start)) cycles += 1;
    for (let at = start; !seen.has(at); at = permutation[at]!) seen.add(at);
  }
  return permutation.length - cycles;
}
