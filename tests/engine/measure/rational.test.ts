import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  approximate,
  isWhole,
  one,
  rational,
  rationalText,
  roundToMultiple,
  zero,
} from '#engine/measure/rational.ts';
import type { Rational } from '#engine/measure/rational.ts';
import { aboveZero, rationals } from './arbitrary.ts';

describe('truth', () => {
  test('a fraction is held in lowest terms with its sign apart', () => {
    const { s, n, d } = rational(-6, 8);
    expect([s, n, d]).toEqual([-1n, 3n, 4n]);
    expect(rationalText(rational(6, -8))).toBe('-3/4');
    expect(rationalText(rational(-10, 5))).toBe('-2');
    expect(rationalText(rational(0, -5))).toBe('0');
  });

  test.each([
    ['1/32', 'nearest', '1/16'],
    ['-1/32', 'nearest', '-1/16'],
    ['3/32', 'nearest', '1/8'],
    ['1/33', 'nearest', '0'],
    ['1/32', 'up', '1/16'],
    ['1/32', 'down', '0'],
    ['-1/32', 'up', '0'],
    ['-1/32', 'down', '-1/16'],
    ['1/8', 'up', '1/8'],
    ['1/8', 'down', '1/8'],
  ] as const)('%s rounded %s to sixteenths is %s', (text, rounding, expected) => {
    const [n = '', d = '1'] = text.split('/');
    const value = rational(BigInt(n), BigInt(d));
    expect(rationalText(roundToMultiple(value, rational(1, 16), rounding))).toBe(expected);
  });

  test('a float within the range of floats comes out as it is', () => {
    expect(approximate(rational(1, 3))).toBe(1 / 3);
    expect(approximate(rational(-254, 10_000))).toBe(-0.0254);
    expect(approximate(zero)).toBe(0);
  });

  test('approximating numbers too large for a float still gives their quotient', () => {
    const huge = 10n ** 5000n;
    expect(approximate(rational(2n * huge + 1n, huge))).toBeCloseTo(2, 12);
    expect(approximate(rational(huge))).toBe(Infinity);
    expect(approximate(rational(-1n, huge))).toBe(-0);
  });
});

describe('laws', () => {
  test('rounding moves a number by less than a step, and by no more than half to the nearest', () => {
    fc.assert(
      fc.property(rationals, aboveZero, (value, step) => {
        const distance = (rounded: Rational): Rational => rounded.sub(value);
        const nearest = roundToMultiple(value, step);
        const up = distance(roundToMultiple(value, step, 'up'));
        const down = distance(roundToMultiple(value, step, 'down'));
        expect(isWhole(nearest.div(step))).toBe(true);
        expect(distance(nearest).abs().mul(2n).lte(step)).toBe(true);
        expect(up.gte(0n) && up.lt(step)).toBe(true);
        expect(down.lte(0n) && down.neg().lt(step)).toBe(true);
      }),
    );
  });

  test('rounding to the nearest treats both signs alike', () => {
    fc.assert(
      fc.property(rationals, aboveZero, (value, step) => {
        const [there, back] = [value, value.neg()].map((v) => roundToMultiple(v, step));
        expect(there?.equals(back?.neg() ?? one)).toBe(true);
      }),
    );
  });

  test('an approximation is within two units in the last place', () => {
    fc.assert(
      fc.property(aboveZero, (value) => {
        const float = approximate(value);
        const exponent = Math.floor(Math.log2(float)) - 52;
        const exact =
          exponent < 0
            ? rational(BigInt(float / 2 ** exponent), 2n ** BigInt(-exponent))
            : rational(BigInt(float));
        expect(
          exact
            .sub(value)
            .abs()
            .div(value)
            .lt(rational(1n, 2n ** 50n)),
        ).toBe(true);
      }),
    );
  });
});

describe('refusals', () => {
  test.each([0.1, NaN, Infinity, 2 ** 53])('a fraction of %s is refused', (float) => {
    expect(() => rational(float)).toThrow(RangeError);
    expect(() => rational(1, float)).toThrow(RangeError);
  });

  test('zero below the line is refused', () => {
    expect(() => rational(1, 0)).toThrow(RangeError);
    expect(() => rational(1n, 0n)).toThrow(RangeError);
  });

  test('a rounding step of zero or less is refused', () => {
    expect(() => roundToMultiple(one, zero)).toThrow(RangeError);
    expect(() => roundToMultiple(one, one.neg())).toThrow(RangeError);
  });

  test('a float is no operand, by type', () => {
    // @ts-expect-error a float would come in as some fraction near it
    expect(one.mul(0.5).d).toBe(2n);
  });
});
