import { describe, expect, test } from 'vitest';
import { parseQuantity } from '#engine/measure/parse-quantity.ts';
import { quantityWords } from '#ui/measure/quantity-words.ts';

const words = (written: string, language: 'en' | 'es' = 'en'): string => {
  const read = parseQuantity(written);
  if (!read.ok) throw new Error(`${written} is no quantity`);
  return quantityWords(read.value, language);
};

describe('truth', () => {
  // Which unit is read on site is common practice.
  test.each([
    ['8 in', '8 in', '8 pulg'],
    ['1 1/2 in', '1 1/2 in', '1 1/2 pulg'],
    ['0 in', '0 in', '0 pulg'],
    ['36 in', '36 in', '36 pulg'],
    ['50 ft', '50 ft', '50 pies'],
    ['12 ft 6 1/2 in', `12'-6 1/2"`, `12'-6 1/2"`],
    ['40 mil', '40 mil', '40 mil'],
    ['1/16 in', '1/16 in', '1/16 pulg'],
    ['45 s', '45 s', '45 s'],
    ['2 min', '2 min', '2 min'],
    ['90 min', '90 min', '90 min'],
    ['24 h', '24 h', '24 h'],
    ['30 day', '30 days', '30 días'],
    ['40 °F', '40 °F', '40 °F'],
    ['45 deg', '45°', '45°'],
    ['60 %', '60 %', '60 %'],
    ['10.1 fl oz', '10.1 fl oz', '10.1 oz líq'],
    ['1 gal', '1 gal', '1 gal'],
    ['250 ft2/gal', '250 ft²/gal', '250 pie²/gal'],
    ['2', '2', '2'],
  ])('%s is said %s, in Spanish %s', (written, en, es) => {
    expect(words(written)).toBe(en);
    expect(words(written, 'es')).toBe(es);
  });

  test('a wait between two seconds is never said shorter than it is', () => {
    expect(words('24/7 min')).toBe('3 min 26 s');
    expect(words('59.5 s')).toBe('1 min');
  });
});
