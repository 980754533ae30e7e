import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chiSquareTail } from '#engine/statistics/chi-square.ts';

describe('truth', () => {
  // M. Abramowitz, I. A. Stegun, "Handbook of mathematical functions", 1964, table 26.8 (from memory,
  // to six figures).
  test.each([
    [3.841459, 1, 0.05],
    [6.634897, 1, 0.01],
    [5.991465, 2, 0.05],
    [18.30704, 10, 0.05],
    [124.3421, 100, 0.05],
    [2.55821, 10, 0.99],
  ])('%f of %i degrees is passed with chance %f', (value, degrees, chance) => {
    expect(chiSquareTail(value, degrees)).toBeCloseTo(chance, 6);
  });
});

const values = fc.double({ min: 0.001, max: 300, noNaN: true });

describe('laws', () => {
  test('of an even number of degrees it is a finite sum', () => {
    fc.assert(
      fc.property(values, fc.integer({ min: 1, max: 40 }), (value, half) => {
        let [term, sum] = [1, 0];
        for (let j = 0; j < half; j += 1) {
          sum += term;
          term *= value / 2 / (j + 1);
        }
        const exact = Math.exp(-value / 2) * sum;
        expect(Math.abs(chiSquareTail(value, 2 * half) - exact)).toBeLessThan(1e-11);
      }),
    );
  });

  test('two more degrees add a term, which ties odd numbers together', () => {
    fc.assert(
      fc.property(values, fc.integer({ min: 0, max: 20 }), (value, whole) => {
        const degrees = 2 * whole + 1;
        // x^(v/2) e^-x / gamma(v/2 + 1), where x is half the value.
        let logGamma = Math.log(Math.PI) / 2;
        for (let at = 0.5; at <= degrees / 2; at += 1) logGamma += Math.log(at);
        const term = Math.exp((degrees / 2) * Math.log(value / 2) - value / 2 - logGamma);
        const gain = chiSquareTail(value, degrees + 2) - chiSquareTail(value, degrees);
        expect(gain).toBeCloseTo(term, 10);
      }),
    );
  });

  test('it falls from 1 to 0', () => {
    expect(chiSquareTail(0, 3)).toBe(1);
    expect(chiSquareTail(Infinity, 3)).toBe(0);
    fc.assert(
      fc.property(values, values, fc.integer({ min: 1, max: 99 }), (one, other, degrees) => {
        const [low, high] = [Math.min(one, other), Math.max(one, other)];
        const fall = chiSquareTail(low, degrees) - chiSquareTail(high, degrees);
        expect(fall).toBeGreaterThanOrEqual(-1e-12);
      }),
    );
  });

  test.each([
    [-1, 1],
    [NaN, 1],
    [1, 0],
    [1, 1.5],
  ])('%f of %f degrees is refused', (value, degrees) => {
    expect(() => chiSquareTail(value, degrees)).toThrow(RangeError);
  });
});
