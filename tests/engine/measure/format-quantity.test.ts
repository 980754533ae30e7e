import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { quantity } from '#engine/measure/conversion.ts';
import { formatExact } from '#engine/measure/format-exact.ts';
import { formatDecimal, formatMixed } from '#engine/measure/format-number.ts';
import { formatQuantity } from '#engine/measure/format-quantity.ts';
import { parseQuantity } from '#engine/measure/parse-quantity.ts';
import { parseUnit } from '#engine/measure/parse-unit.ts';
import { DimensionError } from '#engine/measure/quantity.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import { rational, roundToMultiple } from '#engine/measure/rational.ts';
import type { Unit } from '#engine/measure/unit.ts';
import type { UnitId } from '#engine/measure/units.ts';
import { unitIds, units } from '#engine/measure/units.ts';
import { ok } from '#engine/result.ts';
import { languages } from '#engine/text.ts';
import { rationals } from './arbitrary.ts';

const unitFrom = (text: string): Unit => {
  const read = parseUnit(text);
  if (!read.ok) throw new Error(read.error.message.en);
  return read.value;
};

describe('truth', () => {
  test.each<[number, number, UnitId, string, string]>([
    [73, 3, 'ft', '24.33 ft', '24.33 pies'],
    [1, 1, 'ft', '1 ft', '1 pie'],
    [-1, 1, 'ft', '-1 ft', '-1 pie'],
    [13, 2, 'in', '6.5 in', '6.5 pulg'],
    [60, 1, 'mil', '60 mil', '60 mil'],
    [908_500, 1000, 'ft2', '908.5 ft²', '908.5 pie²'],
    [5, 6, 'gal', '0.83 gal', '0.83 gal'],
    [101, 10, 'fl oz', '10.1 fl oz', '10.1 oz líq'],
    [3, 2, 'h', '1.5 h', '1.5 h'],
    [1, 1, 'day', '1 day', '1 día'],
    [2, 1, 'day', '2 days', '2 días'],
    [70, 1, '°F', '70 °F', '70 °F'],
    [-40, 1, '°C', '-40 °C', '-40 °C'],
    [25, 9, 'C°', '2.78 C°', '2.78 C°'],
    [45, 1, '°', '45°', '45°'],
    [1, 1, 'each', '1 piece', '1 pieza'],
    [8229, 1000, 'each', '8.23 pieces', '8.23 piezas'],
    [10, 1, '%', '10 %', '10 %'],
    [3, 4, '1', '0.75', '0.75'],
    [25, 2, '$', '$12.50', '$12.50'],
    [-5, 1, '$', '-$5.00', '-$5.00'],
  ])('%i/%i %s is written %s and %s', (n, d, unit, en, es) => {
    const q = quantity(rational(n, d), unit);
    expect(formatQuantity(q, unit as never, 'en')).toBe(en);
    expect(formatQuantity(q, unit as never, 'es')).toBe(es);
  });

  test.each<[string, number, string, string]>([
    ['ft2/gal', 250, '250 ft²/gal', '250 pie²/gal'],
    ['pieces/ft', 1, '1 piece/ft', '1 pieza/pie'],
    ['pieces/ft', 3, '3 pieces/ft', '3 piezas/pie'],
    ['$/ft', 3, '3 $/ft', '3 $/pie'],
    ['/ft', 3, '3/ft', '3/pie'],
    ['in/ft', 2, '2 in/ft', '2 pulg/pie'],
    ['°F/m', 2, '2 F°/m', '2 F°/m'],
    ['m^-1', 2, '2 m^-1', '2 m^-1'],
    ['1', 2, '2', '2'],
  ])('in the unit %s, %i is written %s and %s', (text, amount, en, es) => {
    const unit = unitFrom(text);
    expect(formatQuantity(quantity(amount, unit), unit)).toBe(en);
    expect(formatQuantity(quantity(amount, unit), unit, 'es')).toBe(es);
  });

  test('a quantity is converted to the unit it is written in', () => {
    expect(formatQuantity(quantity(70, '°F'), '°C')).toBe('21.11 °C');
    expect(formatQuantity(quantity(1, 'gal'), 'in3')).toBe('231 in³');
    expect(formatQuantity(quantity(5, 'F°'), 'C°')).toBe('2.78 C°');
    const count: Quantity = quantity(12, 'each');
    expect(formatQuantity(count, '1')).toBe('12');
  });

  test('places and fractions are as asked', () => {
    const third = quantity(rational(1, 3), 'gal');
    expect(formatQuantity(third, { unit: 'gal', places: 4 })).toBe('0.3333 gal');
    expect(formatQuantity(third, { unit: 'gal', places: 0 })).toBe('0 gal');
    expect(formatQuantity(third, { unit: 'gal', nearest: rational(1, 4) })).toBe('1/4 gal');
    expect(formatQuantity(quantity(201, 'in'), { unit: 'ft', nearest: rational(1, 2) })).toBe(
      '17 ft',
    );
    expect(formatQuantity(quantity(3, 'in'), { unit: 'ft', nearest: rational(1, 4) }, 'es')).toBe(
      '1/4 pies',
    );
  });

  test.each<[number, number, number, string]>([
    [1, 2, 0, '1'],
    [-1, 2, 0, '-1'],
    [5, 1000, 2, '0.01'],
    [-5, 1000, 2, '-0.01'],
    [-4, 1000, 2, '0'],
    [1005, 1000, 2, '1.01'],
    [999, 1000, 2, '1'],
    [1250, 1, 2, '1250'],
    [1, 3, 0, '0'],
  ])('%i/%i to %i places is %s, a half away from zero', (n, d, places, text) => {
    expect(formatDecimal(rational(n, d), places)).toBe(text);
  });

  // Unicode CLDR, as it comes with the runtime.
  test.each(['en-US', 'es-MX', 'es-US'])('a decimal sign is the one of %s', (locale) => {
    const written = new Intl.NumberFormat(locale, { useGrouping: false }).format(1250.5);
    expect(formatDecimal(rational(12_505, 10), 1)).toBe(written);
    expect(parseQuantity(written)).toEqual(ok(quantity(rational(12_505, 10), '1')));
  });

  test('mixed numbers', () => {
    expect([rational(0), rational(-7, 3), rational(5, 10), rational(4)].map(formatMixed)).toEqual([
      '0',
      '-2 1/3',
      '1/2',
      '4',
    ]);
  });

  test('exact text is one per quantity', () => {
    expect(formatExact(quantity(rational(301, 2), 'in'))).toBe('38227/10000 m');
    expect(formatExact(quantity(32, '°F'))).toBe('5463/20 K');
    expect(formatExact(quantity(9, 'F°'))).toBe('5 C°');
    expect(formatExact(quantity(12, 'each'))).toBe('12 each');
    expect(formatExact(quantity(75, '%'))).toBe('3/4');
    expect(formatExact(quantity(1, unitFrom('ft2/gal')))).toBe('240000/9779 m^-1');
  });
});

describe('laws', () => {
  const cases = fc.tuple(fc.constantFrom(...unitIds), rationals, fc.nat({ max: 6 }));

  test('what is written in any language reads back as the rounded amount', () => {
    fc.assert(
      fc.property(cases, fc.constantFrom(...languages), ([id, amount, places], language) => {
        const rounded = roundToMultiple(amount, rational(1n, 10n ** BigInt(places)));
        fc.pre(units[id].dimension.name !== 'temperature' || amount.gt(0n));
        const text = formatQuantity(quantity(amount, id), { unit: id as never, places }, language);
        expect(parseQuantity(text, units[id].dimension.name)).toEqual(ok(quantity(rounded, id)));
      }),
    );
  });

  test('the labels of products read back as the same unit', () => {
    const names = fc.constantFrom(...unitIds.filter((id) => id !== '1'));
    const signs = fc.constantFrom('/', '·');
    fc.assert(
      fc.property(
        fc.array(fc.tuple(names, signs), { minLength: 2, maxLength: 5 }),
        fc.constantFrom(...languages),
        (factors, language) => {
          const text = factors.map(([name, sign], i) => (i === 0 ? name : sign + name)).join('');
          const unit = unitFrom(text);
          const again = unitFrom(unit.label[language][1]);
          expect([again.size, again.dimension]).toEqual([unit.size, unit.dimension]);
        },
      ),
    );
  });
});

describe('refusals', () => {
  test('a quantity is not written in a unit of something else', () => {
    // @ts-expect-error gallons do not measure a length
    expect(() => formatQuantity(quantity(1, 'ft'), 'gal')).toThrow(DimensionError);
    // @ts-expect-error a temperature is no difference
    expect(() => formatQuantity(quantity(70, '°F'), 'F°')).toThrow(DimensionError);
  });
});
