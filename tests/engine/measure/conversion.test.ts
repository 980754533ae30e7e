import fc from 'fast-check';
import { unit as independent } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { divide, equals, multiply } from '#engine/measure/arithmetic.ts';
import { amountIn, quantity } from '#engine/measure/conversion.ts';
import { formatDecimal } from '#engine/measure/format-number.ts';
import { expectA } from '#engine/measure/quantity.ts';
import { approximate, rational, rationalText } from '#engine/measure/rational.ts';
import type { UnitId } from '#engine/measure/units.ts';
import { unitIds, units } from '#engine/measure/units.ts';
import type { NamedUnit } from '#engine/measure/unit.ts';
import { rationals } from './arbitrary.ts';

describe('truth', () => {
  // NIST Handbook 44, Appendix C: the inch and the gallon are exact, and all else follows.
  test.each<[number, UnitId, string, UnitId]>([
    [1, 'in', '127/5', 'mm'],
    [1, 'gal', '231', 'in3'],
    [1, 'in3', '16387064/1000000', 'mL'],
    [1, 'fl oz', '231/128', 'in3'],
    [1, 'fl oz', '295735295625/10000000000', 'mL'],
    [1, 'ft3', '1728/231', 'gal'],
    [1, 'gal', '128', 'fl oz'],
    [1, 'gal', '3785411784/1000000000', 'L'],
    [1, 'ft', '12', 'in'],
    [1, 'yd', '3', 'ft'],
    [1, 'ft2', '144', 'in2'],
    [1, 'yd2', '9', 'ft2'],
    [1, 'm', '1000', 'mm'],
    [1, 'm3', '1000', 'L'],
    [1000, 'mil', '1', 'in'],
    [1, 'day', '1440', 'min'],
    [1, 'each', '100', '%'],
  ])('%i %s is %s %s', (amount, from, expected, to) => {
    const [n = '', d = '1'] = expected.split('/');
    const q = quantity(amount, from);
    expect(amountIn(q, to as never)).toEqual(rational(BigInt(n), BigInt(d)));
  });

  // Fixed points of the scales: NIST SP 811 (2008), B.8. -40 is where both scales read the same.
  test.each<[string, '°C' | '°F' | 'K', string, '°C' | '°F' | 'K']>([
    ['32', '°F', '0', '°C'],
    ['212', '°F', '100', '°C'],
    ['-40', '°F', '-40', '°C'],
    ['0', '°C', '5463/20', 'K'],
    ['-45967/100', '°F', '0', 'K'],
    ['0', 'K', '-5463/20', '°C'],
    ['70', '°F', '190/9', '°C'],
  ])('%s %s is %s %s', (from, scale, expected, other) => {
    const [n = '', d = '1'] = from.split('/');
    const point = quantity(rational(BigInt(n), BigInt(d)), scale);
    expect(rationalText(amountIn(point, other))).toBe(expected);
  });

  // Worked from the identities above: length = volume / bead section. A bead is w by d inches.
  const beads: readonly (readonly [string, string, string, string, string, string])[] = [
    ['1/8', '1/8', '97.21', '192.50', '279.12', '1232.0'],
    ['3/16', '3/16', '43.21', '85.56', '124.06', '547.6'],
    ['1/4', '1/8', '48.61', '96.25', '139.56', '616.0'],
    ['1/4', '1/4', '24.30', '48.12', '69.78', '308.0'],
    ['3/8', '1/4', '16.20', '32.08', '46.52', '205.3'],
    ['3/8', '3/8', '10.80', '21.39', '31.01', '136.9'],
    ['1/2', '1/4', '12.15', '24.06', '34.89', '154.0'],
    ['1/2', '3/8', '8.10', '16.04', '23.26', '102.7'],
    ['1/2', '1/2', '6.08', '12.03', '17.45', '77.0'],
    ['3/4', '3/8', '5.40', '10.69', '15.51', '68.4'],
  ];
  const inches = (text: string) => {
    const [n = '', d = '1'] = text.split('/');
    return quantity(rational(BigInt(n), BigInt(d)), 'in');
  };
  const volumes = [
    quantity(rational(101, 10), 'fl oz'),
    quantity(20, 'fl oz'),
    quantity(29, 'fl oz'),
    quantity(1, 'gal'),
  ];

  test.each(beads)('a bead of %s by %s in runs %s, %s, %s and %s ft', (w, d, ...expected) => {
    const section = multiply(inches(w), inches(d));
    const feet = volumes.map((volume) =>
      amountIn(expectA(divide(volume, section), 'length'), 'ft'),
    );
    // Within half of the last digit, included: 48.125 stands there as 48.12, to the even digit.
    feet.forEach((exact, i) => {
      const printed = expected[i] ?? '';
      const [whole = '', tenths = ''] = printed.split('.');
      const value = rational(BigInt(whole + tenths), 10n ** BigInt(tenths.length));
      const unit = rational(1n, 10n ** BigInt(tenths.length));
      expect(exact.sub(value).abs().mul(2n).lte(unit)).toBe(true);
    });
  });

  test('101 tenths of an ounce at 1/4 by 1/4 in run 24.3 ft, neither half nor double', () => {
    const run = divide(volumes[0] ?? quantity(0, 'gal'), quantity(rational(1, 16), 'in2'));
    expect(formatDecimal(amountIn(expectA(run, 'length'), 'ft'), 1)).toBe('24.3');
  });

  test('a gallon spread one mil thick covers 1604.17 square feet', () => {
    const area = expectA(divide(quantity(1, 'gal'), quantity(1, 'mil')), 'area');
    expect(rationalText(amountIn(area, 'ft2'))).toBe(rationalText(rational(231_000, 144)));
    expect(formatDecimal(amountIn(area, 'ft2'), 2)).toBe('1604.17');
  });
});

describe('laws', () => {
  const idsWithSize = unitIds.filter((id) => id !== '1');

  test('an amount of a unit is that amount in that unit', () => {
    fc.assert(
      fc.property(fc.constantFrom(...unitIds), rationals, (id, amount) => {
        expect(amountIn(quantity(amount, id), id)).toEqual(amount);
      }),
    );
  });

  test('going by way of another unit of the same dimension changes nothing', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...unitIds),
        fc.constantFrom(...unitIds),
        rationals,
        (from, to, amount) => {
          fc.pre(units[from].dimension.name === units[to].dimension.name);
          const q = quantity(amount, from);
          expect(equals(quantity(amountIn(q, to), to), q as never)).toBe(true);
        },
      ),
    );
  });

  // mathjs 15 keeps its own table of units, in floats.
  const independentNames: Partial<Record<UnitId, readonly [name: string, base: string]>> = {
    in: ['in', 'm'],
    ft: ['ft', 'm'],
    yd: ['yd', 'm'],
    mil: ['mil', 'm'],
    mm: ['mm', 'm'],
    cm: ['cm', 'm'],
    m: ['m', 'm'],
    in2: ['sqin', 'm2'],
    ft2: ['sqft', 'm2'],
    yd2: ['sqyd', 'm2'],
    m2: ['m2', 'm2'],
    in3: ['cuin', 'm3'],
    ft3: ['cuft', 'm3'],
    m3: ['m3', 'm3'],
    'fl oz': ['floz', 'm3'],
    gal: ['gal', 'm3'],
    mL: ['mL', 'm3'],
    L: ['L', 'm3'],
    s: ['s', 's'],
    min: ['minute', 's'],
    h: ['hour', 's'],
    day: ['day', 's'],
    K: ['K', 'K'],
    '°C': ['degC', 'K'],
    '°F': ['degF', 'K'],
    '°': ['deg', 'deg'],
  };

  test('every unit of measurement has its independent twin', () => {
    const without = idsWithSize.filter((id) => independentNames[id] === undefined);
    expect(without).toEqual(['C°', 'F°', 'each', '%', '$']);
  });

  test.each(Object.entries(independentNames))(
    '%s agrees with an independent table within 1e-12',
    (id, [name, base]) => {
      const unit: NamedUnit = units[id as UnitId];
      fc.assert(
        fc.property(fc.integer({ min: -400, max: 1_000_000 }), (amount) => {
          const ours = approximate(unit.size.mul(BigInt(amount)).add(unit.zero));
          const theirs = independent(amount, name).toNumber(base);
          const scale = Math.max(Math.abs(theirs), Math.abs(approximate(unit.zero)));
          expect(Math.abs(ours - theirs)).toBeLessThanOrEqual(1e-12 * scale);
        }),
      );
    },
  );
});
