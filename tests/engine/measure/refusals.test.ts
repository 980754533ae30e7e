import { describe, expect, test } from 'vitest';
import { decodeQuantity } from '#engine/measure/encode-quantity.ts';
import type { DimensionName } from '#engine/measure/dimension.ts';
import { measureFaultCodes } from '#engine/measure/fault.ts';
import type { MeasureFault, MeasureFaultCode } from '#engine/measure/fault.ts';
import { longestText, parseQuantity } from '#engine/measure/parse-quantity.ts';
import { parseUnit } from '#engine/measure/parse-unit.ts';
import { languages } from '#engine/text.ts';

/** A text, and the part of it that the fault points at. */
type Refusal = readonly [
  text: string,
  code: MeasureFaultCode,
  found: string,
  wanted?: DimensionName,
];

const refusals: readonly Refusal[] = [
  ['', 'EMPTY', ''],
  [' \t\n', 'EMPTY', ' \t\n'],
  [`${'1'.repeat(longestText)} in`, 'TOO_LONG', ' in'],
  ['5 m·m·m·m·m·m·m·m·s', 'TOO_LONG', 's'],
  ['abc', 'NOT_A_NUMBER', 'abc'],
  ['ft 6', 'NOT_A_NUMBER', 'ft 6'],
  ['-', 'NOT_A_NUMBER', ''],
  ['--5 in', 'NOT_A_NUMBER', '-5 in'],
  ['+5 in', 'NOT_A_NUMBER', '+5 in'],
  ['NaN in', 'NOT_A_NUMBER', 'NaN in'],
  ['1.2.3 in', 'NOT_A_NUMBER', '1.2.3'],
  ['1,25,000 in', 'NOT_A_NUMBER', '1,25,000'],
  ['12,50.5 in', 'NOT_A_NUMBER', '12,50.5'],
  ['1.5/2 in', 'NOT_A_NUMBER', '1.5/2'],
  ['1/2/3 in', 'NOT_A_NUMBER', '1/2/3'],
  ['1/2.5 in', 'NOT_A_NUMBER', '1/2.5'],
  ['1,250 in', 'AMBIGUOUS_NUMBER', '1,250'],
  ['3 ft 1,250 in', 'AMBIGUOUS_NUMBER', '1,250'],
  ['3 m, 1,250 mm', 'AMBIGUOUS_NUMBER', '1,250'],
  ['1/0 in', 'ZERO_DENOMINATOR', '1/0'],
  ['12 0/0', 'ZERO_DENOMINATOR', '0/0'],
  ['6 4/4 in', 'IMPROPER_FRACTION', '4/4'],
  [`12'-6-17/16"`, 'IMPROPER_FRACTION', '17/16'],
  [`12'--6"`, 'SIGN_INSIDE', '-'],
  ['12 ft - 6 in', 'SIGN_INSIDE', '-'],
  ['3 m -82 cm', 'SIGN_INSIDE', '-'],
  ['12', 'MISSING_UNIT', '12', 'length'],
  [`12' 6`, 'MISSING_UNIT', '6'],
  [`12'-6`, 'MISSING_UNIT', '6'],
  ['12 ft2 6 in', 'MISSING_UNIT', '2'],
  ['12 6 in', 'MISSING_UNIT', '12'],
  ['70', 'MISSING_UNIT', '70', 'temperature'],
  ['12 cubits', 'UNKNOWN_UNIT', 'cubits'],
  ['12 ftt', 'UNKNOWN_UNIT', 'ftt'],
  ['250 ft2/foo', 'UNKNOWN_UNIT', 'foo'],
  ['250 ft2/', 'UNKNOWN_UNIT', ''],
  ['12 ft2', 'WRONG_DIMENSION', '12 ft2', 'length'],
  [' 45° ', 'WRONG_DIMENSION', '45°', 'temperature'],
  ['5 F°', 'WRONG_DIMENSION', '5 F°', 'temperature'],
  ['10 %', 'WRONG_DIMENSION', '10 %', 'count'],
  ['12', 'MISSING_UNIT', '12', 'product'],
  ['6 in 12 ft', 'OUT_OF_ORDER_PARTS', '12 ft'],
  ['6 in 6 in', 'OUT_OF_ORDER_PARTS', '6 in'],
  ['82 cm 3 m', 'OUT_OF_ORDER_PARTS', '3 m'],
  ['3 m 6 in', 'PARTS_DO_NOT_JOIN', '6 in'],
  ['12 ft² 6 in', 'PARTS_DO_NOT_JOIN', '6 in'],
  ['5 °F 3 °F', 'PARTS_DO_NOT_JOIN', '3 °F'],
  ['12 ft 6 in/gal', 'PARTS_DO_NOT_JOIN', '6 in/gal'],
  [`12.5' 6"`, 'FRACTION_NOT_LAST', `12.5'`],
  ['1/2 ft 3 in', 'FRACTION_NOT_LAST', '1/2 ft'],
  ['-500 °F', 'BELOW_ABSOLUTE_ZERO', '-500 °F'],
  ['-1 K', 'BELOW_ABSOLUTE_ZERO', '-1 K'],
  ['6 in deep', 'TRAILING_TEXT', 'deep'],
  ['6 in2 in', 'TRAILING_TEXT', 'in'],
  [`12'-6" ± 1/8"`, 'TRAILING_TEXT', '± 1/8"'],
  ['$5 ft', 'TRAILING_TEXT', 'ft'],
];

describe('refusals', () => {
  for (const [text, code, found, wanted] of refusals) {
    test(`${JSON.stringify(text)} is ${code} at ${JSON.stringify(found)}`, () => {
      const read = parseQuantity(text, wanted);
      const error = read.ok ? undefined : read.error;
      expect(error?.code).toBe(code);
      expect(error && text.slice(error.at, error.at + error.length)).toBe(found);
    });
  }

  test('every code has a text that brings it about', () => {
    const brought = new Set([...refusals.map(([, code]) => code), 'NOT_ENCODED']);
    expect(measureFaultCodes.filter((code) => !brought.has(code))).toEqual([]);
  });

  test.each<[string, DimensionName | undefined, string, string]>([
    [
      '1,250 in',
      undefined,
      '“1,250” can mean 1250 or 1.250. Write the one that you mean.',
      '“1,250” puede ser 1250 o 1.250. Escriba el que quiere decir.',
    ],
    [
      '12 ft2',
      'length',
      '“12 ft2” is an area. Write a length (in, ft, yd, mil, mm, cm, m).',
      '“12 ft2” es un área. Escriba una longitud (pulg, pies, yd, mil, mm, cm, m).',
    ],
    [
      '250 ft2/gal',
      'length',
      '“250 ft2/gal” is a quantity of length^-1. Write a length (in, ft, yd, mil, mm, cm, m).',
      '“250 ft2/gal” es una cantidad de longitud^-1. Escriba una longitud (pulg, pies, yd, mil, mm, cm, m).',
    ],
    [
      '12 ft',
      'product',
      '“12 ft” is a length. Write a quantity in units such as ft²/gal, $/ft.',
      '“12 ft” es una longitud. Escriba una cantidad en unidades como pie²/gal, $/pie.',
    ],
    [
      '70',
      'temperature',
      '“70” has no unit. Write one after it, such as K, °C, °F.',
      '“70” no tiene unidad. Escriba una después, como K, °C, °F.',
    ],
    [
      '12 cubits',
      undefined,
      '“cubits” is not a unit known here. Write one such as ft, in, mm, m, ft², gal, °F.',
      '“cubits” no es una unidad conocida. Escriba una como pies, pulg, mm, m, pie², gal, °F.',
    ],
  ])('%j is refused with what was found and how to mend it', (text, wanted, en, es) => {
    expect(parseQuantity(text, wanted)).toMatchObject({ error: { message: { en, es } } });
  });

  const faults: readonly MeasureFault[] = [
    ...refusals.map(([text, , , wanted]) => parseQuantity(text, wanted)),
    ...['', 'cubit', 'ft/', 'x'.repeat(longestText + 1)].map(parseUnit),
    ...[null, { value: '1.5' }, { value: '5', dimension: 'weight' }].map(decodeQuantity),
  ].flatMap((read) => (read.ok ? [] : [read.error]));

  test.each(measureFaultCodes)('%s is said in every language, each in its own words', (code) => {
    const said = faults.filter((fault) => fault.code === code).map(({ message }) => message);
    expect(said).not.toEqual([]);
    for (const { en, es } of said) {
      expect(en).toMatch(/^[“A-Z].*[.)]$/);
      expect(es).toMatch(/^[“A-Z].*[.)]$/);
      expect(es).not.toBe(en);
      expect(es).not.toMatch(/\b(the|is|of|such|Write)\b/);
    }
  });

  test('what was found stands in the message, in every language', () => {
    for (const { message } of faults) {
      const quoted = languages.map((language) => /“[^”]*”/.exec(message[language])?.[0]);
      expect(new Set(quoted).size).toBe(1);
    }
  });

  test.each([
    ['', 'EMPTY'],
    ['cubit', 'UNKNOWN_UNIT'],
    ['2 ft', 'UNKNOWN_UNIT'],
    ['ft in', 'UNKNOWN_UNIT'],
    ['ft/', 'UNKNOWN_UNIT'],
    ['x'.repeat(longestText + 1), 'TOO_LONG'],
  ])('the unit %j is %s', (text, code) => {
    expect(parseUnit(text)).toMatchObject({ ok: false, error: { code } });
  });

  test.each([
    null,
    'length',
    5,
    [],
    {},
    { value: 5, dimension: 'length' },
    { value: '5', dimension: 'weight' },
    { value: '5', dimension: 'product' },
    { value: '5', dimension: 'toString' },
    { value: '5', dimension: { mass: 1 } },
    { value: '5', dimension: { length: 1.5 } },
    { value: '5', dimension: { length: 1e9 } },
    { value: '1/0', dimension: 'length' },
    { value: '1.5', dimension: 'length' },
    { value: '', dimension: 'length' },
    { value: '9'.repeat(3000), dimension: 'length' },
  ])('%j is no stored quantity', (encoded) => {
    expect(decodeQuantity(encoded)).toMatchObject({ ok: false, error: { code: 'NOT_ENCODED' } });
  });
});
