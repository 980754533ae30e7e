import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compare, negate, roundTo } from '#engine/measure/arithmetic.ts';
import { amountIn, quantity } from '#engine/measure/conversion.ts';
import { formatLength, sixteenth } from '#engine/measure/format-length.ts';
import type { LengthStyle } from '#engine/measure/format-length.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import { rational } from '#engine/measure/rational.ts';
import { lengths } from './arbitrary.ts';

const inches = (n: number, d = 1) => quantity(rational(n, d), 'in');

describe('truth', () => {
  test.each<[string, Quantity<'length'>]>([
    ['0"', inches(0)],
    ['1/2"', inches(1, 2)],
    ['6 1/2"', inches(13, 2)],
    [`1'-0"`, inches(12)],
    [`1'-0 1/2"`, inches(25, 2)],
    [`12'-6 1/2"`, inches(301, 2)],
    [`-12'-6 1/2"`, inches(-301, 2)],
    ['-1/2"', inches(-1, 2)],
    ['1/2"', inches(8, 16)],
    ['7/8"', inches(14, 16)],
    [`1000'-0"`, inches(12_000)],
  ])('%s is so many inches, in feet and inches', (text, length) => {
    expect(formatLength(length, { system: 'us' })).toBe(text);
  });

  // Rounding traps at 1/16 in. Half to even would give 0 for 1/32 in; without the carry, 11.96875 in
  // would be written 12" or 0'-12".
  test.each<[string, number, number, string]>([
    ['1/32 in, an exact half, goes up', 1, 32, '1/16"'],
    ['3/32 in, an exact half, goes up', 3, 32, '1/8"'],
    ['-1/32 in goes away from zero', -1, 32, '-1/16"'],
    ['less than a half vanishes', 31, 1000, '0"'],
    ['less than minus a half vanishes without a sign', -31, 1000, '0"'],
    ['11.96875 in carries into the foot', 1_196_875, 100_000, `1'-0"`],
    ['-11.96875 in carries too', -1_196_875, 100_000, `-1'-0"`],
    ['11.96874 in does not carry', 1_196_874, 100_000, '11 15/16"'],
    ['23.99 in is two feet', 2399, 100, `2'-0"`],
    ['5.99 in carries into the inch', 599, 100, '6"'],
  ])('%s', (_, n, d, text) => {
    expect(formatLength(inches(n, d), { system: 'us' })).toBe(text);
  });

  test.each<[string, LengthStyle]>([
    [`12'-6 3/8"`, { system: 'us' }],
    [`12'-6 3/8"`, { system: 'us', style: 'feet-inches' }],
    ['150 3/8"', { system: 'us', style: 'inches' }],
    [`12'-6 1/2"`, { system: 'us', nearest: inches(1, 2) }],
    [`12'-6"`, { system: 'us', nearest: inches(1) }],
    [`13'-0"`, { system: 'us', nearest: inches(12) }],
    ['150 25/64"', { system: 'us', nearest: inches(1, 64), style: 'inches' }],
    ['150 2/5"', { system: 'us', nearest: inches(1, 10), style: 'inches' }],
    ['3.82 m', { system: 'metric' }],
    ['3.82 m', { system: 'metric', style: 'metres' }],
    ['3820 mm', { system: 'metric', style: 'millimetres' }],
    ['4 m', { system: 'metric', nearest: quantity(1, 'm') }],
    ['3.8200076 m', { system: 'metric', nearest: quantity(1, 'mil') }],
    [
      '3820 mm',
      { system: 'metric', style: 'millimetres', nearest: quantity(rational(1, 2), 'mm') },
    ],
  ])('3.82 m is %s in one of its styles', (text, style) => {
    expect(formatLength(quantity(rational(382, 100), 'm'), style)).toBe(text);
  });

  test('metric lengths are to the millimetre, an exact half away from zero', () => {
    const half = quantity(rational(5, 10_000), 'm');
    expect(formatLength(half, { system: 'metric' })).toBe('0.001 m');
    expect(formatLength(negate(half), { system: 'metric' })).toBe('-0.001 m');
    expect(formatLength(inches(301, 2), { system: 'metric' })).toBe('3.823 m');
  });
});

describe('laws', () => {
  test('what is written is no further from the length than half of what it is rounded to', () => {
    fc.assert(
      fc.property(lengths, (length) => {
        const rounded = roundTo(length, sixteenth);
        const off = amountIn(rounded, 'in').sub(amountIn(length, 'in')).abs();
        expect(off.lte(rational(1, 32))).toBe(true);
      }),
    );
  });

  test('inches beside feet are below twelve, and fractions below one inch', () => {
    fc.assert(
      fc.property(lengths, (length) => {
        const text = formatLength(length, { system: 'us' });
        const [, , inch = '', above = '0', below = '1'] =
          /^-?(\d+'-)?(?:(\d+) ?)?(?:(\d+)\/(\d+))?"$/.exec(text) ?? [];
        expect(text).toMatch(/^-?(\d+'-)?\d/);
        expect(Number(inch)).toBeLessThan(12);
        expect(Number(above)).toBeLessThan(Number(below));
        expect(16 % Number(below)).toBe(0);
      }),
    );
  });

  test('of two lengths, the one written larger is not the smaller', () => {
    fc.assert(
      fc.property(lengths, lengths, (a, b) => {
        const [x, y] = [a, b].map((length) => roundTo(length, sixteenth));
        if (x && y && compare(x, y) < 0) expect(compare(a, b)).toBeLessThan(0);
      }),
    );
  });
});
