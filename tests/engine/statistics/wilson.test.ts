import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { wilson } from '#engine/statistics/wilson.ts';

describe('truth', () => {
  // The package binom of R, as kept in the tests of statsmodels (test_proportion.py and
  // results_proportion.py, github.com/statsmodels/statsmodels).
  test.each([
    [18, 20, 0.6989663547715128, 0.972133518786232],
    [4, 20, 0.0806576625797981, 0.4160174322518935],
    [4, 200, 0.00780442641634947, 0.05028708690582643],
    [190, 200, 0.910421851861224, 0.972617354399236],
  ])('%i hits in %i trials leave the rates from %f to %f', (hits, trials, low, high) => {
    const interval = wilson(hits, trials);
    expect(interval.low).toBeCloseTo(low, 12);
    expect(interval.high).toBeCloseTo(high, 12);
  });

  test.each([
    [1, 30, 0.00590859, 0.16670391],
    [29, 30, 0.8332961, 0.9940914],
    [0, 30, 0, 0.11351339],
    [30, 30, 0.8864866, 1],
  ])(
    '%i hits in %i trials leave the rates from %f to %f, to seven places',
    (hits, trials, low, high) => {
      const interval = wilson(hits, trials);
      expect(interval.low).toBeCloseTo(low, 7);
      expect(interval.high).toBeCloseTo(high, 7);
    },
  );

  test('no hits close it with 0 exactly, nothing but hits with 1', () => {
    expect(wilson(0, 7).low).toBe(0);
    expect(wilson(7, 7).high).toBe(1);
  });
});

const counted = fc
  .integer({ min: 1, max: 100_000 })
  .chain((trials) => fc.tuple(fc.integer({ min: 0, max: trials }), fc.constant(trials)));

describe('laws', () => {
  test('the rate lies within, and the interval within 0 and 1', () => {
    fc.assert(
      fc.property(counted, ([hits, trials]) => {
        const { low, high } = wilson(hits, trials);
        expect(0 <= low && low <= hits / trials && hits / trials <= high && high <= 1).toBe(true);
      }),
    );
  });

  test('misses leave the mirror image of hits', () => {
    fc.assert(
      fc.property(counted, ([hits, trials]) => {
        expect(wilson(trials - hits, trials).high).toBeCloseTo(1 - wilson(hits, trials).low, 12);
      }),
    );
  });

  test('its ends are where the rate is just as far off as the width allows', () => {
    fc.assert(
      fc.property(counted, ([hits, trials]) => {
        const z = 1.5;
        for (const end of Object.values(wilson(hits, trials, z))) {
          const off = Math.abs(hits / trials - end);
          expect(off).toBeCloseTo(z * Math.sqrt((end * (1 - end)) / trials), 9);
        }
      }),
    );
  });

  test.each([
    [0, 0],
    [1, -1],
    [0, 2.5],
    [3, 2],
    [-1, 2],
    [0.5, 2],
    [NaN, 2],
    [1, Infinity],
  ])('%d hits in %d trials are refused', (hits, trials) => {
    expect(() => wilson(hits, trials)).toThrow(RangeError);
  });

  test('an interval of no width is refused', () => {
    expect(() => wilson(1, 2, 0)).toThrow(RangeError);
    expect(() => wilson(1, 2, NaN)).toThrow(RangeError);
  });
});
