import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cohenKappa, type Kappa } from '#engine/statistics/kappa.ts';

const valued = (...table: Parameters<typeof cohenKappa>): Kappa => {
  const found = cohenKappa(...table);
  if (typeof found === 'string') throw new Error(found);
  return found;
};

// J. Cohen 1960 and 1968, as shares of 100; man/kappa.Rd of psych 2.5.3 (github.com/cran/psych) prints
// .492, .348, .353.
const cohen = [
  [44, 7, 9],
  [5, 20, 5],
  [1, 3, 6],
];

describe('truth', () => {
  test('the examples of Cohen have the published kappas', () => {
    expect(valued(cohen).kappa).toBeCloseTo(0.492, 3);
    expect(valued(cohen).kappa).toBeCloseTo(0.4915254, 7);
    expect(
      valued(cohen, [
        [0, 1, 3],
        [1, 0, 6],
        [3, 6, 0],
      ]).kappa,
    ).toBeCloseTo(0.3478261, 7);
    expect(
      valued(cohen, [
        [0, 1, 4],
        [1, 0, 6],
        [2, 2, 0],
      ]).kappa,
    ).toBeCloseTo(0.3533835, 7);
  });

  test('plain and weighted errors are those of a published printout', () => {
    // A printout of another program in the tests of statsmodels
    // (statsmodels/stats/tests/test_inter_rater.py, github.com/statsmodels/statsmodels 039c320), to
    // four places; its 95 % limits are .2137 and .7547.
    const table = [
      [0, 4, 1],
      [0, 8, 0],
      [0, 1, 5],
    ];
    const plain = valued(table);
    expect(plain.kappa).toBeCloseTo(0.4842, 4);
    expect(plain.error).toBeCloseTo(0.138, 4);
    expect(plain.kappa - 1.959964 * plain.error).toBeCloseTo(0.2137, 4);
    expect(plain.kappa + 1.959964 * plain.error).toBeCloseTo(0.7547, 4);
    const weighted = valued(table, [
      [0, 1, 2],
      [1, 0, 1],
      [2, 1, 0],
    ]);
    expect(weighted.kappa).toBeCloseTo(0.4701, 4);
    expect(weighted.error).toBeCloseTo(0.1457, 4);
  });

  // Textbook tables of two categories, values recomputed.
  test.each([
    [[20, 5, 10, 15], 0.4],
    [[45, 15, 25, 15], 0.1304348],
    [[25, 35, 5, 35], 0.2592593],
    [[20, 20, 10, 50], 0.3478261],
    [[90, 5, 5, 0], -0.0526316],
  ])('%j gives %f', ([a, b, c, d], kappa) => {
    expect(
      valued([
        [a!, b!],
        [c!, d!],
      ]).kappa,
    ).toBeCloseTo(kappa, 7);
  });

  test('it says where it has no value', () => {
    expect(cohenKappa([])).toBe('no-cases');
    expect(
      cohenKappa([
        [0, 0],
        [0, 0],
      ]),
    ).toBe('no-cases');
    expect(
      cohenKappa([
        [9, 0],
        [0, 0],
      ]),
    ).toBe('no-room-for-disagreement');
  });
});

const tables = fc.integer({ min: 2, max: 4 }).chain((size) =>
  fc.array(fc.array(fc.integer({ min: 0, max: 20 }), { minLength: size, maxLength: size }), {
    minLength: size,
    maxLength: size,
  }),
);

describe('laws', () => {
  test('examiners change places and nothing changes', () => {
    fc.assert(
      fc.property(tables, (counts) => {
        const [one, other] = [
          counts,
          counts.map((row, i) => row.map((_, j) => counts[j]![i]!)),
        ].map((table) => cohenKappa(table));
        if (typeof one === 'string' || typeof other === 'string') {
          expect(other).toBe(one);
          return;
        }
        expect(other!.kappa).toBeCloseTo(one!.kappa, 12);
        expect(other!.error).toBeCloseTo(one!.error, 9);
      }),
    );
  });

  test('it is at most 1, and 1 for full agreement alone', () => {
    fc.assert(
      fc.property(tables, (counts) => {
        const found = cohenKappa(counts);
        if (typeof found === 'string') return;
        const agree = counts.every((row, i) => row.every((count, j) => i === j || count === 0));
        expect(found.kappa).toBeLessThanOrEqual(1);
        expect(found.kappa === 1).toBe(agree);
      }),
    );
  });

  test('with ten times the cases the error is a root of ten smaller', () => {
    const tenfold = cohen.map((row) => row.map((count) => count * 10));
    expect(valued(tenfold).error * Math.sqrt(10)).toBeCloseTo(valued(cohen).error, 12);
  });

  test('twice the weights weigh the same', () => {
    const twice = cohen.map((row, i) => row.map((_, j) => (i === j ? 0 : 2)));
    expect(valued(cohen, twice)).toEqual(valued(cohen));
  });

  test.each([
    [[[1, 2]], undefined],
    [[[1.5]], undefined],
    [[[-1]], undefined],
    [[[1]], [[1]]],
    [[[1]], []],
  ])('%j weighed %j is refused', (counts, weights) => {
    expect(() => cohenKappa(counts, weights)).toThrow(RangeError);
  });
});
