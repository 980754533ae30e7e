import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { randomFrom } from '#engine/random.ts';
import { abilityReliability } from '#engine/statistics/ability-reliability.ts';
import { expectedAbility } from '#engine/statistics/expected-ability.ts';
import {
  chanceOf,
  difficultyOf,
  itemInformation,
  testInformation,
} from '#engine/statistics/item-curve.ts';
import { likeliestAbility } from '#engine/statistics/likeliest-ability.ts';
import { absent } from '#engine/statistics/responses.ts';
import { drawAbilities, simulateResponses } from '#engine/statistics/simulate-responses.ts';
import { converged, curvesOf, expectEach, lsat6 } from './lsat6.ts';

const curves = curvesOf(converged(lsat6, 'slope-common'));
const withTotal = (total: number) => [0, 1, 2, 3, 4].map((item) => (item < total ? 1 : 0));

describe('truth', () => {
  test('LSAT 6: the likeliest abilities by total, with errors', () => {
    // JSS 17(5), p. 14, to three places; five places recomputed.
    const found = [0, 1, 2, 3, 4, 5].map((total) => likeliestAbility(curves, withTotal(total)));
    const abilities = found.map(({ ability }) => ability);
    expectEach(abilities, [-1.91, -1.438, -0.959, -0.466, 0.049, 0.593], 3);
    expectEach(abilities, [-1.91047, -1.43842, -0.95932, -0.466, 0.04901, 0.59298], 5);
    expectEach(
      found.map(({ error }) => error),
      [0.79, 0.793, 0.801, 0.816, 0.836, 0.862],
      3,
    );
  });

  test('LSAT 6: the mean abilities by total, with spreads', () => {
    // Recomputed with other code.
    const found = [0, 1, 2, 3, 4, 5].map((total) => expectedAbility(curves, withTotal(total)));
    expectEach(
      found.map(({ ability }) => ability),
      [-1.91012, -1.42881, -0.94056, -0.43867, 0.08353, 0.63221],
      5,
    );
    expectEach(
      found.map(({ error }) => error),
      [0.79732, 0.80032, 0.80878, 0.82258, 0.8413, 0.86401],
      5,
    );
  });

  test('LSAT 6: test information from -4 to 2', () => {
    // Recomputed with other code.
    const found = [-4, -3, -2, -1, 0, 1, 2].map((ability) => testInformation(curves, ability));
    expectEach(found, [0.41969, 0.54744, 0.60353, 0.56078, 0.43655, 0.28702, 0.16456], 5);
  });

  test('at its difficulty an item is even, and tells most', () => {
    const curve = { slope: 1.6, intercept: -0.8 };
    expect(difficultyOf(curve)).toBe(0.5);
    expect(chanceOf(curve, 0.5)).toBe(0.5);
    expect(itemInformation(curve, 0.5)).toBeCloseTo(1.6 ** 2 / 4, 12);
  });
});

const anyCurves = fc.array(
  fc.record({
    slope: fc.double({ min: -3, max: 4, noNaN: true }),
    intercept: fc.double({ min: -4, max: 4, noNaN: true }),
  }),
  { minLength: 1, maxLength: 12 },
);
const asked = anyCurves.chain((curves) =>
  fc.tuple(
    fc.constant(curves),
    fc.array(fc.constantFrom(0, 1, absent), { minLength: curves.length, maxLength: curves.length }),
  ),
);

describe('laws', () => {
  test('who answered nothing is where everybody starts', () => {
    for (const found of [
      expectedAbility(curves, Array(5).fill(absent)),
      likeliestAbility(curves, Array(5).fill(absent)),
    ]) {
      expect(found.ability).toBeCloseTo(0, 12);
      expect(found.error).toBeCloseTo(1, 6);
    }
  });

  test('the likeliest ability is where answers and what was known pull alike', () => {
    fc.assert(
      fc.property(asked, ([curves, answers]) => {
        const { ability } = likeliestAbility(curves, answers);
        const pull = curves.reduce((sum, curve, item) => {
          if (answers[item] === absent) return sum;
          return sum + curve.slope * (answers[item]! - chanceOf(curve, ability));
        }, -ability);
        expect(pull).toBeCloseTo(0, 8);
      }),
    );
  });

  test('one more right answer never lowers ability where slopes are above 0', () => {
    fc.assert(
      fc.property(asked, ([curves, answers]) => {
        const upward = curves.map((curve) => ({ ...curve, slope: Math.abs(curve.slope) }));
        const wrong = answers.indexOf(0);
        fc.pre(wrong >= 0);
        const better = answers.with(wrong, 1);
        for (const of of [expectedAbility, likeliestAbility]) {
          const gain = of(upward, better).ability - of(upward, answers).ability;
          expect(gain).toBeGreaterThan(-1e-9);
        }
      }),
    );
  });

  test('the reliability of abilities is the square of their correlation with the true ones', () => {
    const random = randomFrom('reliability');
    const own = Array.from({ length: 15 }, (_, at) => ({ slope: 1.3, intercept: at / 5 - 1.4 }));
    const truths = drawAbilities(random, 4000);
    const { scores } = simulateResponses(random, own, truths);
    const found = [...truths].map((_, at) =>
      expectedAbility(own, scores.subarray(at * 15, at * 15 + 15)),
    );
    const meanOf = (of: (at: number) => number) =>
      truths.reduce((sum, _, at) => sum + of(at), 0) / 4000;
    const [x, y] = [(at: number) => truths[at]!, (at: number) => found[at]!.ability];
    const [meanX, meanY] = [meanOf(x), meanOf(y)];
    const xy = meanOf((at) => (x(at) - meanX) * (y(at) - meanY));
    const xx = meanOf((at) => (x(at) - meanX) ** 2);
    const yy = meanOf((at) => (y(at) - meanY) ** 2);
    expect(Math.abs(abilityReliability(found)! - (xy * xy) / (xx * yy))).toBeLessThan(0.02);
    expect(abilityReliability(found.slice(0, 1))).toBeUndefined();
    expect(
      abilityReliability([0, 1].map(() => expectedAbility(own, Array(15).fill(2)))),
    ).toBeCloseTo(0, 12);
  });

  test('answers and curves are as many', () => {
    expect(() => expectedAbility(curves, [1])).toThrow(RangeError);
    expect(() => likeliestAbility(curves, [1])).toThrow(RangeError);
  });
});
