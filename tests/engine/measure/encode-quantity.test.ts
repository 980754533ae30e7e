import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { quantity } from '#engine/measure/conversion.ts';
import { decodeQuantity, encodeQuantity } from '#engine/measure/encode-quantity.ts';
import { parseQuantity } from '#engine/measure/parse-quantity.ts';
import { rational } from '#engine/measure/rational.ts';
import { ok } from '#engine/result.ts';
import { quantities } from './arbitrary.ts';

describe('truth', () => {
  test('a named quantity is stored under its name', () => {
    expect(encodeQuantity(quantity(rational(301, 2), 'in'))).toEqual({
      value: '38227/10000',
      dimension: 'length',
    });
    expect(encodeQuantity(quantity(-40, '°F'))).toEqual({
      value: '4663/20',
      dimension: 'temperature',
    });
    expect(encodeQuantity(quantity(12, 'each'))).toEqual({ value: '12', dimension: 'count' });
  });

  test('a product is stored by the powers that are not 0', () => {
    const price = parseQuantity('$3.81/ft');
    expect(price.ok && encodeQuantity(price.value)).toEqual({
      value: '25/2',
      dimension: { length: -1, money: 1 },
    });
  });

  test('powers that have a name are read as that name, and fractions in lowest terms', () => {
    expect(decodeQuantity({ value: '50/4', dimension: { length: 2 } })).toEqual(
      ok(quantity(rational(25, 2), 'm2')),
    );
    expect(decodeQuantity({ value: '-0', dimension: {} })).toEqual(ok(quantity(0, '1')));
  });

  test('a row without a prototype is read as any other object', () => {
    const row = Object.assign(Object.create(null), { value: '5', dimension: 'length' }) as unknown;
    expect(decodeQuantity(row)).toEqual(ok(quantity(5, 'm')));
  });
});

describe('laws', () => {
  test('every quantity comes back from JSON as it went', () => {
    fc.assert(
      fc.property(quantities, (q) => {
        expect(decodeQuantity(JSON.parse(JSON.stringify(encodeQuantity(q))))).toEqual(ok(q));
      }),
    );
  });

  test('no value at all makes decoding throw', () => {
    const dimensions = fc.oneof(fc.anything(), fc.dictionary(fc.string(), fc.anything()));
    const encoded = fc.oneof(
      fc.anything(),
      fc.record({ value: fc.anything(), dimension: dimensions }),
      fc.record({ value: fc.constantFrom('1', '2/3', '-5'), dimension: dimensions }),
    );
    fc.assert(
      fc.property(encoded, (value) => {
        const read = decodeQuantity(value);
        expect(read.ok ? read.value.value.d > 0n : read.error.code === 'NOT_ENCODED').toBe(true);
      }),
    );
  });
});
