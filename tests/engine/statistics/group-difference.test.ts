import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { randomFrom } from '#engine/random.ts';
import { groupDifference } from '#engine/statistics/group-difference.ts';
import { type Group, groupStrata } from '#engine/statistics/group-strata.ts';
import { mantelHaenszel, type Stratum } from '#engine/statistics/mantel-haenszel.ts';
import { drawAbilities, simulateResponses } from '#engine/statistics/simulate-responses.ts';
import { answered } from './lsat6.ts';

const stratum = ([a, b, c, d]: readonly number[]): Stratum => ({
  referenceRight: a!,
  referenceWrong: b!,
  focalRight: c!,
  focalWrong: d!,
});

// Berkeley admissions of 1973 by department: men admitted and rejected, women admitted and rejected
// (utstat.toronto.edu/~brunner/oldclass/429Fall04/handouts/429f04_Handout3.html).
const berkeley = [
  [512, 313, 89, 19],
  [353, 207, 17, 8],
  [120, 205, 202, 391],
  [138, 279, 131, 244],
  [53, 138, 94, 299],
  [22, 351, 24, 317],
].map(stratum);

const compared = (strata: readonly Stratum[]) => {
  const found = mantelHaenszel(strata);
  if (!found.ok) throw new Error(found.error.code);
  return found.value;
};

describe('truth', () => {
  test('the Berkeley admissions have the published chi-square, ratio and limits', () => {
    // M. Friendly, vcdExtra, "Tests of association" (github.com/friendly/vcdExtra): 1.4269, p .2323,
    // ratio 0.9046968, 95 % limits 0.7719074 and 1.0603298.
    const found = compared(berkeley);
    expect(found.chiSquare).toBeCloseTo(1.4269, 4);
    expect(found.chance).toBeCloseTo(0.2323, 4);
    expect(found.oddsRatio).toBeCloseTo(0.9046968, 7);
    const reach = 1.959963984540054 * found.logError;
    expect(found.oddsRatio * Math.exp(-reach)).toBeCloseTo(0.7719074, 7);
    expect(found.oddsRatio * Math.exp(reach)).toBeCloseTo(1.0603298, 7);
  });

  test('two tables worked by hand', () => {
    // R = 8x6/20 + 6x8/20 = 4.8, S = 2x4/20 + 4x2/20 = 0.8, ratio 6. Expected 6 and 4, variances
    // 10x10x12x8 / (400x19) and 10x10x8x12 / (400x19), 24/19 in all 48/19: (4 - 1/2)^2 / (48/19) =
    // 12.25 x 19/48.
    const found = compared(
      [
        [8, 2, 4, 6],
        [6, 4, 2, 8],
      ].map(stratum),
    );
    expect(found.oddsRatio).toBeCloseTo(6, 12);
    expect(found.chiSquare).toBeCloseTo((12.25 * 19) / 48, 12);
    expect(found.delta).toBeCloseTo(-2.35 * Math.log(6), 12);
  });

  test('persons are compared with those of as many right, and only who answered all', () => {
    const groups: readonly Group[] = ['reference', 'focal', 'focal', 'reference', 'focal'];
    const { persons, strata } = groupStrata(answered(['10', '01', '11', '0.', '01']), groups);
    expect(persons).toEqual({ reference: 1, focal: 3 });
    expect(strata[0]).toEqual(
      [
        [0, 0, 0, 0],
        [1, 0, 0, 2],
        [0, 0, 1, 0],
      ].map(stratum),
    );
    expect(strata[1]).toEqual(
      [
        [0, 0, 0, 0],
        [0, 1, 2, 0],
        [0, 0, 1, 0],
      ].map(stratum),
    );
    expect(() => groupStrata(answered(['10']), [])).toThrow(RangeError);
  });

  test('it says where nothing can be compared', () => {
    expect(mantelHaenszel([])).toMatchObject({ error: { code: 'NOTHING_TO_COMPARE' } });
    expect(
      mantelHaenszel(
        [
          [3, 2, 0, 0],
          [4, 0, 5, 0],
        ].map(stratum),
      ),
    ).toMatchObject({ error: { code: 'NOTHING_TO_COMPARE' } });
    expect(mantelHaenszel([stratum([3, 0, 0, 5])])).toMatchObject({ error: { code: 'NO_RATIO' } });
    expect(groupDifference([stratum([3, 0, 0, 5])])).toEqual({ size: 'not-comparable' });
    expect(() => mantelHaenszel([stratum([1, -1, 1, 1])])).toThrow(RangeError);
  });

  test('an item made harder for one group is found, and the others are let be', () => {
    const random = randomFrom('group difference');
    const curves = Array.from({ length: 20 }, (_, item) => ({
      slope: 1,
      intercept: (item - 10) / 5,
    }));
    const harder = curves.with(7, { slope: 1, intercept: -0.6 - 1 });
    const one = simulateResponses(random, curves, drawAbilities(random, 1000));
    const other = simulateResponses(random, harder, drawAbilities(random, 1000));
    const responses = {
      persons: 2000,
      items: 20,
      scores: Uint8Array.from([...one.scores, ...other.scores]),
    };
    const groups = Array.from({ length: 2000 }, (_, at) => (at < 1000 ? 'reference' : 'focal'));
    const found = groupStrata(responses, groups).strata.map(groupDifference);
    expect(found[7]).toMatchObject({ size: 'large', favours: 'reference' });
    expect(found.toSpliced(7, 1).map(({ size }) => size)).toEqual(
      Array(19).fill('none-to-speak-of'),
    );
  });
});

const tables = fc.array(
  fc.array(fc.integer({ min: 0, max: 30 }), { minLength: 4, maxLength: 4 }).map(stratum),
  { minLength: 1, maxLength: 6 },
);

describe('laws', () => {
  test('groups alike do not differ', () => {
    fc.assert(
      fc.property(tables, (strata) => {
        const alike = strata.map(({ referenceRight: a, referenceWrong: b }) =>
          stratum([a, b, a, b]),
        );
        const found = mantelHaenszel(alike);
        if (!found.ok) {
          expect(found.error.code).toBe('NOTHING_TO_COMPARE');
          return;
        }
        expect(found.value.oddsRatio).toBeCloseTo(1, 12);
        expect(found.value.chiSquare).toBe(0);
        expect(groupDifference(alike).size).toBe('none-to-speak-of');
      }),
    );
  });

  test('groups that change places turn the difference around', () => {
    fc.assert(
      fc.property(tables, (strata) => {
        const found = mantelHaenszel(strata);
        const turned = mantelHaenszel(
          strata.map(({ referenceRight: a, referenceWrong: b, focalRight: c, focalWrong: d }) =>
            stratum([c, d, a, b]),
          ),
        );
        if (!found.ok || !turned.ok) {
          expect(turned).toEqual(found);
          return;
        }
        expect(turned.value.delta).toBeCloseTo(-found.value.delta, 9);
        expect(turned.value.chiSquare).toBeCloseTo(found.value.chiSquare, 9);
        expect(turned.value.logError).toBeCloseTo(found.value.logError, 9);
      }),
    );
  });

  test('of one table the ratio is its own', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 99 }), { minLength: 4, maxLength: 4 }),
        (cells) => {
          const [a, b, c, d] = cells as [number, number, number, number];
          const found = compared([stratum(cells)]);
          expect(found.oddsRatio).toBeCloseTo((a * d) / (b * c), 9);
          // And its error that of B. Woolf 1955.
          expect(found.logError).toBeCloseTo(Math.sqrt(1 / a + 1 / b + 1 / c + 1 / d), 9);
        },
      ),
    );
  });
});
