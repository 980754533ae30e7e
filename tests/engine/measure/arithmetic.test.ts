import fc from 'fast-check';
import { describe, expect, expectTypeOf, test } from 'vitest';
import {
  absolute,
  add,
  compare,
  divide,
  equals,
  multiply,
  negate,
  power,
  roundTo,
  scale,
  subtract,
} from '#engine/measure/arithmetic.ts';
import { amountIn, quantity } from '#engine/measure/conversion.ts';
import { formatExact } from '#engine/measure/format-exact.ts';
import { DimensionError, expectA, isA } from '#engine/measure/quantity.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import { one, rational } from '#engine/measure/rational.ts';
import { lengths, quantities, quantitiesOf, rationals } from './arbitrary.ts';

const foot = quantity(1, 'ft');
const warm = quantity(70, '°F');
const five = quantity(5, 'F°');
/** As the program sees a quantity whose dimension it learns only while running. */
const some = (q: Quantity): Quantity => q;

describe('truth', () => {
  test('length times length is an area, times length again a volume', () => {
    expect(multiply(foot, foot)).toEqual(quantity(1, 'ft2'));
    expect(power(foot, 3)).toEqual(quantity(1, 'ft3'));
    expect(divide(quantity(1, 'ft3'), foot)).toEqual(quantity(1, 'ft2'));
  });

  test('a length over a length is a plain number', () => {
    expect(divide(quantity(24, 'ft'), quantity(8, 'in'))).toEqual(quantity(36, '1'));
  });

  test('a coverage times a volume is an area', () => {
    const coverage = divide(quantity(250, 'ft2'), quantity(1, 'gal'));
    expect(coverage.dimension).toMatchObject({ name: 'product', powers: { length: -1 } });
    expect(multiply(coverage, quantity(4, 'gal'))).toEqual(quantity(1000, 'ft2'));
  });

  test('a price per length times a length is money', () => {
    const price = divide(quantity(rational(7, 2), '$'), foot);
    expect(multiply(price, quantity(12, 'ft'))).toEqual(quantity(42, '$'));
  });

  test('pieces times a length is a length', () => {
    expect(multiply(quantity(11, 'each'), quantity(10, 'ft'))).toEqual(quantity(110, 'ft'));
  });

  test('a count and a ratio add up to a ratio, whichever comes first', () => {
    const bays = some(quantity(12, 'each'));
    const first = some(quantity(1, '1'));
    expect(add(bays, first)).toEqual(quantity(13, '1'));
    expect(add(first, bays)).toEqual(quantity(13, '1'));
    expect(add(bays, bays)).toEqual(quantity(24, 'each'));
  });

  test('a temperature less a temperature is a difference, and a difference moves a temperature', () => {
    expect(subtract(quantity(75, '°F'), warm)).toEqual(five);
    expect(add(warm, five)).toEqual(quantity(75, '°F'));
    expect(add(five, warm)).toEqual(quantity(75, '°F'));
    expect(subtract(warm, five)).toEqual(quantity(65, '°F'));
  });

  test('five Fahrenheit degrees are fewer than three Celsius degrees', () => {
    expect(compare(five, quantity(3, 'C°'))).toBeLessThan(0);
    expect(equals(five, quantity(rational(25, 9), 'C°'))).toBe(true);
  });

  test('rounding up takes the next step, and none where it stands on one', () => {
    const step = quantity(1, 'ft');
    expect(roundTo(quantity(97, 'in'), step, 'up')).toEqual(quantity(9, 'ft'));
    expect(roundTo(quantity(96, 'in'), step, 'up')).toEqual(quantity(8, 'ft'));
    expect(roundTo(quantity(95, 'in'), step, 'down')).toEqual(quantity(7, 'ft'));
    expect(roundTo(quantity(90, 'in'), step)).toEqual(quantity(8, 'ft'));
  });

  test('signs', () => {
    expect(negate(foot)).toEqual(quantity(-1, 'ft'));
    expect(absolute(negate(foot))).toEqual(foot);
    expect(absolute(foot)).toEqual(foot);
    expect(scale(foot, rational(1, 3))).toEqual(quantity(4, 'in'));
  });
});

describe('laws', () => {
  test('addition is commutative and associative, and subtraction undoes it', () => {
    fc.assert(
      fc.property(lengths, lengths, lengths, (a, b, c) => {
        expect(add(a, b)).toEqual(add(b, a));
        expect(add(add(a, b), c)).toEqual(add(a, add(b, c)));
        expect(subtract(add(a, b), b)).toEqual(a);
      }),
    );
  });

  test('points and differences of temperature are an affine line', () => {
    const points = quantitiesOf('temperature');
    const differences = quantitiesOf('temperature-difference');
    fc.assert(
      fc.property(points, points, differences, (p, q, d) => {
        expect(add(q, subtract(p, q))).toEqual(p);
        expect(subtract(add(p, d), p)).toEqual(d);
        expect(subtract(p, q)).toEqual(negate(subtract(q, p)));
      }),
    );
  });

  test('multiplication is commutative and distributes over addition, and division undoes it', () => {
    fc.assert(
      fc.property(lengths, lengths, rationals, (a, b, x) => {
        expect(multiply(a, b)).toEqual(multiply(b, a));
        expect(scale(add(a, b), x)).toEqual(add(scale(a, x), scale(b, x)));
        if (!b.value.equals(0n)) expect(divide(multiply(a, b), b)).toEqual(a);
      }),
    );
  });

  test('any two quantities can be multiplied, but for temperatures', () => {
    fc.assert(
      fc.property(quantities, quantities, (a, b) => {
        if ([a, b].some((q) => isA(q, 'temperature'))) {
          expect(() => multiply(a, b)).toThrow(DimensionError);
        } else {
          expect(multiply(a, b)).toEqual(multiply(b, a));
        }
      }),
    );
  });

  test('comparing agrees with subtracting', () => {
    fc.assert(
      fc.property(lengths, lengths, (a, b) => {
        expect(compare(a, b)).toBe(subtract(a, b).value.compare(0n));
        expect(equals(a, a)).toBe(true);
      }),
    );
  });
});

describe('refusals', () => {
  const area = some(quantity(1, 'ft2'));
  const length = some(foot);
  const point = some(warm);

  test.each<[string, () => unknown]>([
    ['add a length and an area', () => add(length, area)],
    ['subtract an area from a length', () => subtract(length, area)],
    ['compare a length and an area', () => compare(length, area)],
    ['add two temperatures', () => add(point, point)],
    ['add a length to a temperature', () => add(point, length)],
    ['add a temperature to a length', () => add(length, point)],
    ['subtract a temperature from a difference', () => subtract(some(five), point)],
    ['subtract a length from a temperature', () => subtract(point, length)],
    ['compare a temperature and a difference', () => compare(point, some(five))],
    ['multiply a temperature', () => multiply(some(quantity(2, '1')), point)],
    ['divide a temperature', () => divide(point, some(quantity(2, '1')))],
    ['divide by a temperature', () => divide(length, point)],
    ['raise a temperature', () => power(point, 2)],
    ['scale a temperature', () => scale(point, 2n)],
    ['round a temperature', () => roundTo(point, some(five))],
    ['round a length to an area', () => roundTo(length, area)],
    ['measure an area in feet', () => amountIn(area, 'ft')],
    ['take a length for an area', () => expectA(length, 'area')],
  ])('to %s is a DimensionError', (_, act) => {
    expect(act).toThrow(DimensionError);
  });

  test('to divide by zero is a RangeError', () => {
    expect(() => divide(foot, quantity(0, 'ft'))).toThrow(RangeError);
    expect(() => power(quantity(0, 'ft'), -1)).toThrow(RangeError);
  });

  test('a DimensionError says in words what did not go together', () => {
    const coverage = divide(foot, quantity(1, 'gal'));
    expect(() => add(length, coverage)).toThrow('Cannot add a length and a quantity of length^-2.');
  });
});

describe('types', () => {
  test('the dimension of a quantity follows from its unit', () => {
    expectTypeOf(foot).toEqualTypeOf<Quantity<'length'>>();
    expectTypeOf(quantity(1, 'fl oz')).toEqualTypeOf<Quantity<'volume'>>();
    expectTypeOf(amountIn(foot, 'in')).toEqualTypeOf<typeof one>();
  });

  test('points and differences are told apart', () => {
    expectTypeOf(subtract(warm, warm)).toEqualTypeOf<Quantity<'temperature-difference'>>();
    expectTypeOf(subtract(warm, five)).toEqualTypeOf<Quantity<'temperature'>>();
    expectTypeOf(add(warm, five)).toEqualTypeOf<Quantity<'temperature'>>();
    expectTypeOf(add(five, warm)).toEqualTypeOf<Quantity<'temperature'>>();
    expectTypeOf(add(five, five)).toEqualTypeOf<Quantity<'temperature-difference'>>();
  });

  test('what cannot go together does not compile, and does not run', () => {
    const area = quantity(1, 'ft2');
    // @ts-expect-error an area is not added to a length
    expect(() => add(foot, area)).toThrow(DimensionError);
    // @ts-expect-error nor subtracted
    expect(() => subtract(foot, area)).toThrow(DimensionError);
    // @ts-expect-error nor compared
    expect(() => compare(foot, area)).toThrow(DimensionError);
    // @ts-expect-error two temperatures have no sum
    expect(() => add(warm, warm)).toThrow(DimensionError);
    // @ts-expect-error twice a temperature means nothing
    expect(() => scale(warm, 2n)).toThrow(DimensionError);
    // @ts-expect-error a length is not measured in gallons
    expect(() => amountIn(foot, 'gal')).toThrow(DimensionError);
  });

  test('a quantity is read-only, and is not made by hand', () => {
    // @ts-expect-error the value of a quantity does not change
    expect(() => (Object.freeze({ ...foot }).value = one)).toThrow(TypeError);
    // @ts-expect-error a quantity is made from an amount and a unit
    const byHand: Quantity<'length'> = { value: one, dimension: foot.dimension };
    expect(formatExact(byHand)).toBe('1 m');
  });
});
