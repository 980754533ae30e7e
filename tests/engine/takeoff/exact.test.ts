import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rational, rationalText, roundToMultiple } from '#engine/measure/rational.ts';
import * as exact from '#engine/takeoff/exact.ts';
import { exactFrom, rationalFrom } from '#engine/takeoff/exact.ts';
import { rationals, aboveZero } from '../measure/arbitrary.ts';

const text = (value: exact.Exact): string => rationalText(rationalFrom(value));

describe('truth', () => {
  it('a sixteenth and a thirty-second are three thirty-seconds', () => {
    expect(exact.add({ n: 1, d: 16 }, { n: 1, d: 32 })).toEqual({ n: 3, d: 32 });
  });

  it('goes on exactly where floats end: 2^53 + 1', () => {
    const large = exact.add(exact.whole(2 ** 53 - 1), exact.whole(2));
    expect(text(large)).toBe('9007199254740993');
    expect(exact.subtract(large, exact.whole(2))).toEqual(exact.whole(2 ** 53 - 1));
  });

  it('never makes a negative zero', () => {
    const zeros = [
      exact.negate(exact.whole(0)),
      exact.multiply(exact.whole(-1), exact.whole(0)),
      exact.roundTo({ n: -1, d: 4 }, exact.whole(1), 'up'),
    ];
    for (const { n } of zeros) expect(Object.is(n, 0)).toBe(true);
  });

  it('refuses division by zero and steps of nothing', () => {
    expect(() => exact.divide(exact.whole(1), exact.whole(0))).toThrow(RangeError);
    expect(() => exact.roundTo(exact.whole(1), exact.whole(0), 'up')).toThrow(RangeError);
  });

  it.each([
    // Value, step, way, and whether a pocket calculator can end up on the other side.
    ['999/1000', 'up', true],
    ['1', 'up', false],
    ['1001/1000', 'up', true],
    ['1001/1000', 'down', true],
    ['11/10', 'up', false],
    ['1/2', 'nearest', true],
    ['49/100', 'nearest', true],
    ['1', 'nearest', false],
    ['3/4', 'nearest', false],
  ] as const)('%s rounded %s hangs on a hair: %s', (value, how, hangs) => {
    const [n = 0, d = 1] = value.split('/').map(Number);
    expect(exact.hangsOn(exactFrom(rational(n, d)), exact.whole(1), how)).toBe(hangs);
  });
});

describe('laws', () => {
  const both = fc.tuple(rationals, rationals);

  it('add, subtract and multiply are those of fraction.js', () => {
    fc.assert(
      fc.property(both, ([a, b]) => {
        const [x, y] = [exactFrom(a), exactFrom(b)];
        expect(text(exact.add(x, y))).toBe(rationalText(a.add(b)));
        expect(text(exact.subtract(x, y))).toBe(rationalText(a.sub(b)));
        expect(text(exact.multiply(x, y))).toBe(rationalText(a.mul(b)));
        expect(Math.sign(exact.compare(x, y))).toBe(a.compare(b));
        expect(exact.equals(x, y)).toBe(a.equals(b));
      }),
    );
  });

  it('divide and power are those of fraction.js', () => {
    fc.assert(
      fc.property(rationals, aboveZero, fc.integer({ min: 1, max: 6 }), (a, b, power) => {
        expect(text(exact.divide(exactFrom(a), exactFrom(b)))).toBe(rationalText(a.div(b)));
        expect(text(exact.divide(exactFrom(a), exactFrom(b.neg())))).toBe(
          rationalText(a.div(b.neg())),
        );
        expect(text(exact.power(exactFrom(a), power))).toBe(rationalText(a.pow(BigInt(power))));
      }),
    );
  });

  it('rounds as the rest of the engine does, every way', () => {
    fc.assert(
      fc.property(
        rationals,
        aboveZero,
        fc.constantFrom('up', 'down', 'nearest'),
        (a, step, how: 'up' | 'down' | 'nearest') => {
          const rounded = exact.roundTo(exactFrom(a), exactFrom(step), how);
          expect(text(rounded)).toBe(rationalText(roundToMultiple(a, step, how)));
        },
      ),
    );
  });

  it('a fraction is small wherever both of its numbers are safe', () => {
    fc.assert(
      fc.property(rationals, (a) => {
        const isSafe =
          a.n <= BigInt(Number.MAX_SAFE_INTEGER) && a.d <= BigInt(Number.MAX_SAFE_INTEGER);
        expect(typeof exactFrom(a).n).toBe(isSafe ? 'number' : 'bigint');
      }),
    );
  });
});
