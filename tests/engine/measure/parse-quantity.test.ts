import fc from 'fast-check';
import { describe, expect, expectTypeOf, test } from 'vitest';
import { quantity } from '#engine/measure/conversion.ts';
import type { DimensionName } from '#engine/measure/dimension.ts';
import { dimensionNames } from '#engine/measure/dimension.ts';
import type { MeasureFault } from '#engine/measure/fault.ts';
import { formatExact } from '#engine/measure/format-exact.ts';
import { longestText, parseQuantity } from '#engine/measure/parse-quantity.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import { rational } from '#engine/measure/rational.ts';
import type { NamedUnit } from '#engine/measure/unit.ts';
import { unitIds, units } from '#engine/measure/units.ts';
import { written } from '#engine/measure/written.ts';
import { ok } from '#engine/result.ts';
import type { Result } from '#engine/result.ts';
import { languages } from '#engine/text.ts';
import { quantities } from './arbitrary.ts';

const exact = (text: string, wanted?: DimensionName): string => {
  const read = parseQuantity(text, wanted);
  return read.ok ? formatExact(read.value) : read.error.code;
};

describe('truth', () => {
  test.each<[string, Quantity]>([
    ['250 sq ft', quantity(250, 'ft2')],
    ['250 sq. ft.', quantity(250, 'ft2')],
    ['250 ft²', quantity(250, 'ft2')],
    ['250 ft2', quantity(250, 'ft2')],
    ['250 ft^2', quantity(250, 'ft2')],
    ['250 square feet', quantity(250, 'ft2')],
    ['250 pies cuadrados', quantity(250, 'ft2')],
    ['250 pies²', quantity(250, 'ft2')],
    ['23,2 m²', quantity(rational(232, 10), 'm2')],
    ['1/16 in²', quantity(rational(1, 16), 'in2')],
    ['100 cm²', quantity(rational(1, 100), 'm2')],
    ['231 cu in', quantity(1, 'gal')],
    ['231 in³', quantity(1, 'gal')],
    ['10.1 fl oz', quantity(rational(101, 10), 'fl oz')],
    ['10.1 fl. oz.', quantity(rational(101, 10), 'fl oz')],
    ['10.1 oz', quantity(rational(101, 10), 'fl oz')],
    ['10,1 oz líq', quantity(rational(101, 10), 'fl oz')],
    ['1 gal 3 fl oz', quantity(131, 'fl oz')],
    ['300 ml', quantity(300, 'mL')],
    ['2 L', quantity(2, 'L')],
    ['4 galones', quantity(4, 'gal')],
    ['90 s', quantity(90, 's')],
    ['1 h 30 min', quantity(90, 'min')],
    ['2 días', quantity(48, 'h')],
    ['1 day 2 h', quantity(26, 'h')],
    ['70 °F', quantity(70, '°F')],
    ['70°F', quantity(70, '°F')],
    ['70 º F', quantity(70, '°F')],
    ['70 F', quantity(70, '°F')],
    ['70 ℉', quantity(70, '°F')],
    ['70 degrees Fahrenheit', quantity(70, '°F')],
    ['-10 °C', quantity(-10, '°C')],
    ['21,5 grados centígrados', quantity(rational(43, 2), '°C')],
    ['300 K', quantity(300, 'K')],
    ['0 K', quantity(0, 'K')],
    ['-459.67 °F', quantity(0, 'K')],
    ['5 F°', quantity(5, 'F°')],
    ['3 C°', quantity(3, 'C°')],
    ['45°', quantity(45, '°')],
    ['45 deg', quantity(45, '°')],
    ['45 grados', quantity(45, '°')],
    ['12', quantity(12, '1')],
    ['3/4', quantity(rational(3, 4), '1')],
    ['10 %', quantity(rational(1, 10), '1')],
    ['10%', quantity(rational(1, 10), '1')],
    ['10 por ciento', quantity(rational(1, 10), '1')],
    ['12 pieces', quantity(12, 'each')],
    ['12 ea', quantity(12, 'each')],
    ['12 pzas.', quantity(12, 'each')],
    ['12 c/u', quantity(12, 'each')],
    ['$12.50', quantity(rational(25, 2), '$')],
    ['$ 12,50', quantity(rational(25, 2), '$')],
    ['-$5', quantity(-5, '$')],
    ['5 $', quantity(5, '$')],
    ['5 dólares', quantity(5, '$')],
  ])('%s', (text, expected) => {
    expect(parseQuantity(text)).toEqual(ok(expected));
  });

  test.each([
    ['250 ft2/gal', '60000000/9779 m^-1'],
    ['250 ft² per gallon', '60000000/9779 m^-1'],
    ['250 pies cuadrados por galón', '60000000/9779 m^-1'],
    ['$3.81/ft', '25/2 m^-1·$'],
    ['3.81 $/ft', '25/2 m^-1·$'],
    ['$3.81 per linear foot', '25/2 m^-1·$'],
    ['127 each/ft', '1250/3 m^-1'],
    ['127/ft', '1250/3 m^-1'],
    ['127 per ft', '1250/3 m^-1'],
    ['1/4 in/ft', '1/48'],
    ['9 °F/m', '5 m^-1·C°'],
    ['12 ft/h/min', '127/7500000 m·s^-2'],
    ['2 ft·yd', '435483/781250 m^2'],
  ])('%s is a product of units', (text, expected) => {
    expect(exact(text)).toBe(expected);
  });

  test('a scale of temperature means a difference where a difference is wanted', () => {
    for (const text of ['5 °F', '5 F', '5 F°', '5 degrees Fahrenheit', '5 ℉']) {
      expect(parseQuantity(text, 'temperature-difference')).toEqual(ok(quantity(5, 'F°')));
    }
    expect(parseQuantity('5 °F', 'temperature')).toEqual(ok(quantity(5, '°F')));
  });

  test('a number alone is a count where a count is wanted', () => {
    expect(parseQuantity('12', 'count')).toEqual(ok(quantity(12, 'each')));
    expect(parseQuantity('12', 'ratio')).toEqual(ok(quantity(12, '1')));
    expect(exact('12', 'length')).toBe('MISSING_UNIT');
  });

  test('the wanted dimension is the dimension of the answer, by type', () => {
    expectTypeOf(parseQuantity('5 ft', 'length')).toEqualTypeOf<
      Result<Quantity<'length'>, MeasureFault>
    >();
    expectTypeOf(parseQuantity('5 ft')).toEqualTypeOf<Result<Quantity, MeasureFault>>();
  });
});

describe('laws', () => {
  test('exact text reads back as the same quantity, whatever its dimension', () => {
    fc.assert(
      fc.property(quantities, (q) => {
        expect(parseQuantity(formatExact(q))).toEqual(ok(q));
      }),
    );
  });

  test('every name of every unit is read as that unit, in capitals too', () => {
    for (const id of unitIds.filter((id) => id !== '1')) {
      const unit: NamedUnit = units[id];
      for (const name of [id, ...unit.label.en, ...unit.label.es, ...unit.aliases]) {
        for (const text of [`2 ${name}`, `2 ${name.toUpperCase()}`, `2${name}`]) {
          expect([text, parseQuantity(text, unit.dimension.name)]).toEqual([
            text,
            ok(quantity(2, id)),
          ]);
        }
      }
    }
  });

  test('no name means two units, but for temperatures and their differences', () => {
    const meanings = new Map<string, Set<string>>();
    for (const id of unitIds) {
      const unit: NamedUnit = units[id];
      for (const name of [id, ...unit.label.en, ...unit.label.es, ...unit.aliases]) {
        const plain = written(name).plain;
        meanings.set(plain, (meanings.get(plain) ?? new Set()).add(id));
      }
    }
    const twice = [...meanings.values()].filter((ids) => ids.size > 1).map((ids) => [...ids]);
    for (const ids of twice) {
      expect([
        ['°C', 'C°'],
        ['°F', 'F°'],
        ['K', 'C°'],
      ]).toContainEqual(ids);
    }
  });

  test('a plain twin stands at the same place as what was written', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(written(text).plain).toHaveLength(text.length);
      }),
    );
  });

  const wanted = fc.constantFrom(undefined, 'product' as const, ...dimensionNames);
  const morsels = fc.constantFrom(
    ...`12 6 0 1/2 ½ ⅛ . , - − ' " ’ ″ ft in m cm gal °F F° ° % $ / · ^ ² 2 per and y foo 1,250 é \u0301 \ud800`.split(
      ' ',
    ),
    ' ',
  );
  const texts = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 60 }),
    fc.array(morsels, { maxLength: 12 }).map((parts) => parts.join('')),
    fc.array(morsels, { maxLength: 12 }).map((parts) => parts.join(' ')),
  );

  test('any text at all is a quantity with an exact value or a fault with a place in the text', () => {
    fc.assert(
      fc.property(texts, wanted, (text, wanted) => {
        const read = parseQuantity(text, wanted);
        if (read.ok) {
          expect(read.value.value.d).toBeGreaterThan(0n);
          if (wanted !== undefined) expect(read.value.dimension.name).toBe(wanted);
          expect(parseQuantity(formatExact(read.value))).toEqual(read);
        } else {
          const { at, length, message } = read.error;
          expect(at).toBeGreaterThanOrEqual(0);
          expect(length).toBeGreaterThanOrEqual(0);
          expect(at + length).toBeLessThanOrEqual(text.length);
          for (const language of languages) expect(message[language]).toMatch(/[.)]$/);
        }
      }),
      { numRuns: 5000 },
    );
  });

  test('the longest text is read within a second, however it is made', () => {
    for (const morsel of [
      '1',
      '1,',
      '1 ',
      '-',
      ' ',
      '1/',
      'ft·',
      'yd^9·',
      "1'",
      '°',
      '1 ft ',
      '.',
      'é',
    ]) {
      const text = `1 ${morsel.repeat(longestText)}`.slice(0, longestText);
      const start = performance.now();
      parseQuantity(text);
      expect([morsel, performance.now() - start < 1000]).toEqual([morsel, true]);
    }
  });
});
