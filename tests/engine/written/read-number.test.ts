import { describe, expect, it } from 'vitest';
import { formatExact } from '#engine/measure/format-exact.ts';
import { readNumber, unitNamed } from '#engine/written/read-number.ts';

const read = (text: string, unit: string): string => {
  const found = readNumber(text, unitNamed(unit));
  return found.ok ? formatExact(found.value) : found.error.code;
};

describe('truth', () => {
  it.each([
    ['8', 'in', '127/625 m'],
    ['8 in', 'in', '127/625 m'],
    ['8"', 'ft', '127/625 m'],
    ['8 pulg', 'in', '127/625 m'],
    ['1 1/2', 'in', '381/10000 m'],
    ['½', 'in', '127/10000 m'],
    ['12\'-6 1/2"', 'ft', '38227/10000 m'],
    ['10', '%', '1/10'],
    ['10 %', '%', '1/10'],
    ['45°', 'deg', '45 °'],
    ['45', 'deg', '45 °'],
    ['40', '°F', '49967/180 K'],
    ['40 °F', '°F', '49967/180 K'],
    ['5', 'F°', '25/9 C°'],
    ['5 °F', 'F°', '25/9 C°'],
    ['2', '1', '2'],
    ['2 screws', '1', '2'],
    ['2 tornillos', '1', '2'],
    ['24', 'h', '86400 s'],
    ['1 day', 'h', '86400 s'],
    ['250', 'ft2/gal', '60000000/9779 m^-1'],
  ])('%s, asked in %s, is %s', (text, unit, exact) => expect(read(text, unit)).toBe(exact));

  it('what is of another kind is read as that', () => {
    expect(read('8 min', 'in')).toBe('480 s');
    expect(read('8 in', 'min')).toBe('127/625 m');
  });

  it('what cannot be read says why', () => {
    expect(read('eight', 'in')).toBe('NOT_A_NUMBER');
    expect(read('', 'in')).toBe('EMPTY');
  });
});
