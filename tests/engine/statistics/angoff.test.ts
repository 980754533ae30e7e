import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { angoff, type AngoffCut } from '#engine/statistics/angoff.ts';

const panel = [
  [0.8, 0.6, 0.9, 0.5, 0.7, 0.75, 0.6, 0.85, 0.65, 0.55],
  [0.85, 0.65, 0.9, 0.55, 0.7, 0.8, 0.6, 0.9, 0.7, 0.6],
  [0.75, 0.55, 0.85, 0.45, 0.65, 0.7, 0.55, 0.8, 0.6, 0.5],
  [0.8, 0.7, 0.95, 0.6, 0.75, 0.8, 0.65, 0.9, 0.7, 0.65],
  [0.7, 0.5, 0.85, 0.4, 0.6, 0.7, 0.5, 0.75, 0.6, 0.45],
];

const cutOf = (ratings: Parameters<typeof angoff>[0]): AngoffCut => {
  const found = angoff(ratings);
  if (!found.ok) throw new Error(found.error[0]?.code);
  return found.value;
};

describe('truth', () => {
  test('a panel of five made up for this has the cut worked by hand', () => {
    // No published panel with its errors was found; the arithmetic was checked on its own.
    const found = cutOf(panel);
    for (const [at, cut] of [6.9, 7.25, 6.4, 7.5, 6.05].entries()) {
      expect(found.judges[at]).toBeCloseTo(cut, 12);
    }
    expect(found.cut).toBeCloseTo(6.82, 12);
    expect(found.sd).toBeCloseTo(0.5964478, 7);
    expect(found.error).toBeCloseTo(0.2667396, 7);
    expect(found.variance.judge).toBeCloseTo(0.00351389, 8);
    expect(found.variance.item).toBeCloseTo(0.01670833, 8);
    expect(found.variance.residual).toBeCloseTo(0.00043611, 8);
    expect(found.shareError.sameItems).toBeCloseTo(0.026674, 7);
    expect(found.shareError.otherItems).toBeCloseTo(0.0488092, 7);
  });

  test('every fault of a panel is told at once', () => {
    const found = angoff([[0.5, 2], [0.5]]);
    expect(!found.ok && found.error.map(({ code }) => code)).toEqual(['NOT_A_SHARE', 'UNEVEN_ROW']);
    expect(angoff([])).toMatchObject({
      error: [{ code: 'TOO_FEW_JUDGES' }, { code: 'TOO_FEW_ITEMS' }],
    });
    expect(
      angoff([
        [NaN, 0.5],
        [0.5, 0.5],
      ]),
    ).toMatchObject({ error: [{ judge: 0, item: 0 }] });
  });
});

const panels = fc
  .tuple(fc.integer({ min: 2, max: 8 }), fc.integer({ min: 2, max: 8 }))
  .chain(([judges, items]) =>
    fc.array(
      fc.array(
        fc.integer({ min: 0, max: 20 }).map((n) => n / 20),
        {
          minLength: items,
          maxLength: items,
        },
      ),
      { minLength: judges, maxLength: judges },
    ),
  );

describe('laws', () => {
  test('judges who agree leave no error for these items', () => {
    const [row = []] = panel;
    const found = cutOf([row, row, row]);
    expect(found.error).toBeCloseTo(0, 12);
    expect(found.variance.judge).toBeCloseTo(0, 12);
    expect(found.variance.residual).toBeCloseTo(0, 12);
    expect(found.shareError.otherItems).toBeGreaterThan(0.01);
  });

  test('the error by components is that of the judges, and other items only add to it', () => {
    fc.assert(
      fc.property(panels, (ratings) => {
        const { error, variance, shareError } = cutOf(ratings);
        const [judges, items] = [ratings.length, ratings[0]!.length];
        const square = variance.judge / judges + variance.residual / (judges * items);
        expect(square).toBeCloseTo((error / items) ** 2, 12);
        expect(shareError.otherItems).toBeGreaterThanOrEqual(shareError.sameItems - 1e-15);
      }),
    );
  });

  test('ratings of what goes wrong mirror the cut and keep its error', () => {
    fc.assert(
      fc.property(panels, (ratings) => {
        const mirrored = ratings.map((row) => row.map((rating) => 1 - rating));
        const [one, other] = [cutOf(ratings), cutOf(mirrored)];
        expect(other.cut).toBeCloseTo(ratings[0]!.length - one.cut, 9);
        expect(other.error).toBeCloseTo(one.error, 9);
        expect(other.variance.item).toBeCloseTo(one.variance.item, 9);
      }),
    );
  });
});
