import fc from 'fast-check';
import type { Pair } from '#engine/method/partial-order.ts';
import { anyOrder, type StatedOrder } from '../method/orders.ts';

export type AnyAttempt = {
  readonly stated: StatedOrder;
  readonly attempt: readonly number[];
  readonly weights: readonly number[];
};

const steps = (size: number) => [...Array(size).keys()];

const withAttempt = (
  stated: StatedOrder,
  heaviest: number,
  leastPlaced: number,
): fc.Arbitrary<AnyAttempt> =>
  fc.record({
    stated: fc.constant(stated),
    attempt: fc.shuffledSubarray(steps(stated.size), { minLength: leastPlaced }),
    weights: fc.array(fc.integer({ min: 1, max: heaviest }), {
      minLength: stated.size,
      maxLength: stated.size,
    }),
  });

/** Some steps may be missing. */
export const anyAttempt = (maximum = 7, heaviest = 4): fc.Arbitrary<AnyAttempt> =>
  anyOrder(maximum).chain((stated) => withAttempt(stated, heaviest, 0));

/**
 * A heavy chain with light steps that came before it though they must follow one of it (early), or after
 * it though they must precede one (late). Where a late one must precede an early one, not both can go
 * back the shortest way.
 */
export const crossedAttempt: fc.Arbitrary<AnyAttempt> = fc
  .record({
    early: fc.array(fc.nat(4), { minLength: 1, maxLength: 2 }),
    late: fc.array(fc.nat(4), { minLength: 1, maxLength: 2 }),
    heavy: fc.integer({ min: 3, max: 5 }),
    crossed: fc.array(fc.boolean(), { minLength: 4, maxLength: 4 }),
  })
  .map(({ early, late, heavy, crossed }) => {
    const chain = steps(heavy);
    const earlySteps = early.map((_, i) => heavy + i);
    const lateSteps = late.map((_, i) => heavy + early.length + i);
    const size = heavy + early.length + late.length;
    return {
      stated: {
        size,
        pairs: [
          ...chain.slice(1).map((step): Pair => [step - 1, step]),
          ...early.map((last, i): Pair => [last % heavy, earlySteps[i]!]),
          ...late.map((next, i): Pair => [lateSteps[i]!, next % heavy]),
          ...lateSteps.flatMap((x, i) =>
            earlySteps.flatMap((y, j): Pair[] => (crossed[2 * i + j] ? [[x, y]] : [])),
          ),
        ],
      },
      attempt: [...earlySteps, ...chain, ...lateSteps],
      weights: steps(size).map((step) => (step < heavy ? 9 : 1)),
    };
  });
