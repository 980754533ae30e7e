import { describe, expect, it } from 'vitest';
import { echo, pickableUnits, readAnswer } from '#engine/takeoff/read-answer.ts';
import { job, part } from './shipped.ts';
import { exactly, same } from './worked-out.ts';

const wall = job('sheets-straight-run', { run: '81 ft', sheet: '10 ft' });
const length = part(wall, 'length').part;
const sheets = part(wall, 'sheets').part;
const go = part(
  job('dew-point', { air: '70 °F', 'dew-point': '50 °F', surface: '60 °F' }),
  'go',
).part;
const least = part(
  job('dew-point', { air: '70 °F', 'dew-point': '50 °F', surface: '60 °F' }),
  'least',
).part;

const read = (asked: typeof length, text: string, picked?: string) => {
  const found = readAnswer(asked, text, picked);
  if (!found.ok) throw new Error(found.error.message.en);
  return found.value;
};

describe('an answer is read as the trade writes it', () => {
  it.each([
    [`82'-4"`, '82 ft 4 in'],
    ['82 ft 4 in', '82 ft 4 in'],
    ['82 pies 4 pulg', '82 ft 4 in'],
    ['988"', '82 ft 4 in'],
    ['25.0952 m', '25.0952 m'],
    [`82' 4 1/2"`, '82 ft 4 1/2 in'],
    ['82’ 4½”', '82 ft 4 1/2 in'],
    [`82'4`, '82 ft 4 in'],
    ['82 ft 4 1/2', '82 ft 4 1/2 in'],
  ])('%s', (text, wanted) => {
    expect(exactly(read(length, text).value)).toBe(same(wanted));
  });

  it('a bare number is in the unit of the part, or in the one picked beside it', () => {
    expect(exactly(read(length, '988').value)).toBe(same('988 in'));
    expect(exactly(read(length, '82 1/3', 'ft').value)).toBe(same('82 ft 4 in'));
    expect(exactly(read(least, '55').value)).toBe(same('55 °F'));
    expect(exactly(read(least, '13', '°C').value)).toBe(same('13 °C'));
  });

  it.each(['9', '9 sheets', '9 tramos', '9 hojas de membrana', '9 pcs', ' 9 '])(
    '%s is a count',
    (text) => {
      expect(exactly(read(sheets, text).value)).toBe(same('9'));
    },
  );

  it.each([
    ['yes', true],
    ['Sí', true],
    ['si', true],
    ['Yes, prime it', true],
    ['no', false],
    ['No, espere o caliente el muro', false],
  ] as const)('%s decides', (text, wanted) => {
    expect(read(go, text).value).toBe(wanted);
  });

  it('what cannot be read is told in both languages', () => {
    for (const [asked, text] of [
      [length, 'about ten'],
      [length, '5 parsecs'],
      [go, 'perhaps'],
      [sheets, ''],
    ] as const) {
      const found = readAnswer(asked, text);
      expect(found.ok).toBe(false);
      if (found.ok) continue;
      expect(found.error.message.en).toMatch(/\.$/);
      expect(found.error.message.es).toMatch(/\.$/);
      expect(found.error.message.es).not.toBe(found.error.message.en);
    }
  });
});

describe('the echo shows how it was read', () => {
  it.each([
    ['988', `82'-4" = 988"`],
    ['25 m', `≈ 82'-0 1/4" = ≈ 984 1/4"`],
    ['8 1/4 in', '8 1/4"'],
    ['3 gal', '3 gal'],
  ])('%s as %s', (text, shown) => {
    expect(echo(length, read(length, text)).en).toBe(shown);
  });

  it('counts in the words of the part, in each language', () => {
    expect(echo(sheets, read(sheets, '1'))).toEqual({ en: '1 sheet', es: '1 tramo' });
    expect(echo(sheets, read(sheets, '8.23')).es).toBe('8.23 tramos');
    expect(echo(go, read(go, 'si')).en).toBe('Yes, prime it');
  });
});

it('the units to pick from start with the one asked for', () => {
  expect(pickableUnits(length)).toEqual(['feet-inches', 'ft', 'in', 'm', 'mm']);
  expect(pickableUnits(least)).toEqual(['°F', '°C']);
  expect(pickableUnits(sheets)).toEqual(['1']);
  expect(pickableUnits(go)).toEqual([]);
});
