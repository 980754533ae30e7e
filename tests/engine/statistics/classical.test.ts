import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cronbachAlpha } from '#engine/statistics/cronbach-alpha.ts';
import { itemFigures } from '#engine/statistics/item-figures.ts';
import { kr20Interval } from '#engine/statistics/kr20-interval.ts';
import { reliability } from '#engine/statistics/reliability.ts';
import { type Answer, answeredAll, responsesFrom } from '#engine/statistics/responses.ts';
import { totals } from '#engine/statistics/totals.ts';
import { answered, expectEach, lsat6, rowOf } from './lsat6.ts';

// K. L. Wuensch, core.ecu.edu/wuenschk/StatHelp/KR20.txt: ten students, ten items.
const students =
  '1111110110 1011011101 1111011001 0010001000 0000010010 1110111111 1101110111 1111111101 0101111101 1101101110'.split(
    ' ',
  );

const reliable = (responses: Parameters<typeof reliability>[0]) => {
  const found = reliability(responses);
  if (!found.ok) throw new Error(found.error.code);
  return found.value;
};

describe('truth', () => {
  test('totals of LSAT 6 have the published counts, mean and sd', () => {
    // The reference page of mirt (github.com/cran/mirt) prints mean 3.819 and sd 1.035.
    const found = totals(lsat6)!;
    expect(found.counts).toEqual([3, 20, 85, 237, 357, 298]);
    expect(found.mean).toBe(3.819);
    expect(found.sd).toBeCloseTo(1.035, 3);
  });

  test('items of LSAT 6 have the published shares and correlations', () => {
    // JSS 17(5), pp. 5-15; reference page of mirt, to three places; the rest recomputed from the
    // counts.
    const figures = itemFigures(lsat6);
    expect(figures.map(({ proportion }) => proportion)).toEqual([0.924, 0.709, 0.553, 0.763, 0.87]);
    const pointBiserial = figures.map((figure) => figure.pointBiserial);
    expectEach(pointBiserial, [0.362, 0.567, 0.618, 0.534, 0.435], 3);
    expectEach(pointBiserial, [0.36201, 0.566772, 0.61844, 0.534418, 0.435366], 6);
    const corrected = figures.map((figure) => figure.corrected);
    expectEach(corrected, [0.113, 0.153, 0.173, 0.144, 0.122], 3);
    expectEach(corrected, [0.112833, 0.153178, 0.172779, 0.144428, 0.121596], 6);
  });

  test('LSAT 6 has the published alpha and error of measurement', () => {
    // Reference page of mirt: alpha 0.295, error of measurement 0.869; the rest recomputed.
    const found = reliable(lsat6);
    expect(found.kr20).toBeCloseTo(0.2949971922, 10);
    expect(found.errorOfMeasurement).toBeCloseTo(0.8690666, 7);
    expectEach(found.without, [0.275356, 0.237584, 0.216799, 0.245933, 0.266294], 6);
  });

  test('a worked example has its published KR-20', () => {
    // The page gives totals 8 7 7 2 2 9 8 9 7 7, sum of p q 2.18 and variance 5.84.
    const found = reliable(answered(students));
    expect(found.kr20).toBeCloseTo((10 / 9) * (1 - 2.18 / 5.84), 12);
    expect(found.kr20).toBeCloseTo(0.696347, 7);
  });

  test('p q is not mixed with the variance over persons - 1', () => {
    // What that mistake would give for these two, recomputed.
    expect(Math.abs(reliable(answered(students)).kr20 - 0.7378234)).toBeGreaterThan(0.04);
    expect(Math.abs(reliable(lsat6).kr20 - 0.2959522)).toBeGreaterThan(9e-4);
  });

  test('alpha of marks is as worked by hand', () => {
    // Parts 1 2 3 and 2 2 5 have 2/3 and 2 as variances, sums 3 4 8 have 14/3: 2 (1 - (8/3) / (14/3)).
    const rows = [
      [1, 2],
      [2, 2],
      [3, 5],
    ];
    expect(cronbachAlpha(rows)).toBeCloseTo(6 / 7, 12);
  });

  test('who left an item counts for the items answered, and not for totals', () => {
    const found = itemFigures(answered(['11.', '10.', '011', '0.0']));
    expect(found.map(({ answers, right }) => [answers, right])).toEqual([
      [4, 2],
      [3, 2],
      [2, 1],
    ]);
    const more = itemFigures(answered(['11.', '10.', '011', '0.0', '1..']));
    expect(more[0]).toMatchObject({ answers: 5, corrected: found[0]!.corrected });
    expect(totals(answered(['11.', '10.', '011', '0.0']))!.counts).toEqual([0, 0, 1, 0]);
    expect(totals(answered(['1.']))).toBeUndefined();
  });
});

describe('refusals', () => {
  test('what has no figure has none', () => {
    expect(itemFigures(answered(['10', '10'])).map(({ corrected }) => corrected)).toEqual([
      undefined,
      undefined,
    ]);
    expect(itemFigures(answered(['1.', '0.']))[1]).toEqual({
      answers: 0,
      right: 0,
      proportion: undefined,
      pointBiserial: undefined,
      corrected: undefined,
    });
    expect(totals(answered(['10']))!.sd).toBeUndefined();
    expect(reliable(answered(['11', '10', '00'])).without).toEqual([undefined, undefined]);
  });

  test.each([
    [['1', '0'], 'TOO_FEW_ITEMS'],
    [['10', '1.'], 'TOO_FEW_PERSONS'],
    [['10', '01'], 'TOTALS_ALIKE'],
  ])('no reliability of %j: %s', (rows, code) => {
    expect(reliability(answered(rows))).toMatchObject({ ok: false, error: { code } });
  });

  test('alpha says why it has no value, and refuses what is no table', () => {
    expect(cronbachAlpha([[1, 2]])).toBe('too-few-persons');
    expect(cronbachAlpha([[1], [2]])).toBe('too-few-parts');
    expect(
      cronbachAlpha([
        [0.1, 0.2],
        [0.2, 0.1],
      ]),
    ).toBe('sums-alike');
    expect(() => cronbachAlpha([[1, 2], [1]])).toThrow(RangeError);
    expect(() => cronbachAlpha([[1, NaN]])).toThrow(RangeError);
  });

  test('every fault of a table is told at once', () => {
    const rows: readonly (readonly Answer[])[] = [rowOf('10'), rowOf('1'), [1, 2 as 1]];
    const found = responsesFrom(rows);
    expect(!found.ok && found.error.map(({ code }) => code)).toEqual(['UNEVEN_ROW', 'NOT_A_SCORE']);
    expect(responsesFrom([])).toMatchObject({ error: [{ code: 'NOBODY' }] });
    expect(responsesFrom([[]])).toMatchObject({ error: [{ code: 'NO_ITEMS' }] });
  });
});

const tables = fc
  .tuple(fc.integer({ min: 2, max: 6 }), fc.integer({ min: 2, max: 25 }))
  .chain(([items, persons]) =>
    fc.array(fc.array(fc.constantFrom<0 | 1>(0, 1), { minLength: items, maxLength: items }), {
      minLength: persons,
      maxLength: persons,
    }),
  );
const made = (rows: Parameters<typeof responsesFrom>[0]) => {
  const found = responsesFrom(rows);
  if (!found.ok) throw new Error('not a table');
  return found.value;
};

describe('laws', () => {
  test('of items of 0 and 1, alpha is KR-20', () => {
    fc.assert(
      fc.property(tables, (rows) => {
        const found = reliability(made(rows));
        const alpha = cronbachAlpha(rows);
        if (found.ok) expect(alpha).toBeCloseTo(found.value.kr20, 9);
        else expect(alpha).toBe('sums-alike');
      }),
    );
  });

  test('alpha without an item is alpha of the others', () => {
    fc.assert(
      fc.property(tables, (rows) => {
        fc.pre(rows[0]!.length > 2);
        const found = reliability(made(rows));
        if (!found.ok) return;
        const others = reliability(made(rows.map((row) => row.slice(1))));
        if (others.ok) expect(found.value.without[0]).toBeCloseTo(others.value.kr20, 9);
        else expect(found.value.without[0]).toBeUndefined();
      }),
    );
  });

  test('an item turned around turns its corrected correlation around', () => {
    fc.assert(
      fc.property(tables, (rows) => {
        const turned = rows.map(([first, ...others]) => [first === 1 ? 0 : 1, ...others] as const);
        const [one, other] = [itemFigures(made(rows))[0]!, itemFigures(made(turned))[0]!];
        if (one.corrected === undefined) expect(other.corrected).toBeUndefined();
        else expect(other.corrected).toBeCloseTo(-one.corrected, 9);
      }),
    );
  });

  test('the interval of KR-20 holds it, and closes in with more persons', () => {
    const [few, many] = [kr20Interval(0.8, 20, 50), kr20Interval(0.8, 20, 500)];
    expect(few.low).toBeLessThan(many.low);
    expect(many.low).toBeLessThan(0.8);
    expect(0.8).toBeLessThan(many.high);
    expect(many.high).toBeLessThan(few.high);
    expect(() => kr20Interval(0.8, 1, 50)).toThrow(RangeError);
    expect(() => kr20Interval(1.1, 20, 50)).toThrow(RangeError);
  });

  test('who answered all stays, byte by byte', () => {
    const kept = answeredAll(answered(['10', '1.', '01']));
    expect([kept.persons, ...kept.scores]).toEqual([2, 1, 0, 0, 1]);
  });
});
