import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type CheckSheet,
  longestLine,
  merged,
  mostLines,
  noteLine,
  photoLine,
  photosIn,
  sheetFrom,
  weatherLine,
  withLine,
} from '#engine/exam/check-sheet.ts';
import { judgedSheet, pointsUnder, weatherIn } from '#engine/exam/judged-sheet.ts';
import { isMeasured, witnessPoints } from '#engine/exam/witness.ts';
import { quantity } from '#engine/measure/conversion.ts';
import { walls } from '../../content/walls.ts';

const at = (second: number): string => new Date(Date.UTC(2030, 4, 1, 7, 0, second)).toISOString();
const now = at(59);
const photo = '01970000-0000-7000-8000-000000000001';

const sheets: fc.Arbitrary<CheckSheet> = fc.dictionary(
  fc.constantFrom('a/done', 'b/done', 'note:', 'note:a/done'),
  fc.record({
    at: fc.integer({ min: 0, max: 3 }).map(at),
    says: fc.constantFrom(null, 'right', 'wrong'),
  }),
);

describe('laws', () => {
  test('in whatever order and however often sheets meet, the same comes of it', () => {
    fc.assert(
      fc.property(sheets, sheets, sheets, (a, b, c) => {
        expect(merged(a, b)).toEqual(merged(b, a));
        expect(merged(merged(a, b), c)).toEqual(merged(a, merged(b, c)));
        expect(merged(merged(a, b), b)).toEqual(merged(a, b));
      }),
    );
  });

  test('the latest word on every line stands', () => {
    fc.assert(
      fc.property(sheets, sheets, (a, b) => {
        for (const [name, line] of Object.entries(merged(a, b))) {
          const latest = [a[name]?.at, b[name]?.at]
            .filter((one) => one !== undefined)
            .toSorted()
            .at(-1);
          expect(line.at).toBe(latest);
        }
      }),
    );
  });

  test('a change stands over what it changed, even by a clock that was set back', () => {
    const first = withLine({}, 'a/done', 'wrong', Date.parse(at(30)));
    const second = withLine(first, 'a/done', 'right', Date.parse(at(10)));
    expect(merged(first, second)['a/done']?.says).toBe('right');
  });
});

describe('truth', () => {
  const points = new Set(['a/done']);
  const line = { at: at(1), says: 'right' };

  test('a sheet comes in by its points, their notes, the weather and photos', () => {
    const sheet = {
      'a/done': line,
      [noteLine()]: { at: at(1), says: 'Windy.' },
      [noteLine('a/done')]: { at: at(1), says: null },
      [weatherLine('air-temperature')]: { at: at(1), says: '45 °F' },
      [photoLine(photo)]: { at: at(1), says: 'a/done' },
    };
    expect(sheetFrom(sheet, points, now)).toEqual({ ok: true, value: sheet });
    expect(photosIn(sheet)).toEqual([{ id: photo, point: 'a/done' }]);
  });

  test('a line of a clock that goes ahead counts as of now', () => {
    const ahead = { 'a/done': { at: '2099-01-01T00:00:00.000Z', says: 'right' } };
    expect(sheetFrom(ahead, points, now)).toEqual({
      ok: true,
      value: { 'a/done': { at: now, says: 'right' } },
    });
  });

  test.each([
    ['no object', 7, 'NOT_A_SHEET'],
    ['a list', [], 'NOT_A_SHEET'],
    ['an unknown point', { 'b/done': line }, 'NOT_A_LINE'],
    ['a name of the language', JSON.parse(`{"__proto__": ${JSON.stringify(line)}}`), 'NOT_A_LINE'],
    ['a note on nothing', { 'note:b/done': line }, 'NOT_A_LINE'],
    ['an unknown weather', { 'weather:moon': line }, 'NOT_A_LINE'],
    ['a photo without id', { 'photo:1': line }, 'NOT_A_LINE'],
    ['no instant', { 'a/done': { at: 'yesterday', says: 'right' } }, 'NOT_A_LINE'],
    ['no such instant', { 'a/done': { at: '2030-13-01T00:00:00.000Z', says: '' } }, 'NOT_A_LINE'],
    ['a number', { 'a/done': { at: at(1), says: 7 } }, 'NOT_A_LINE'],
    ['too long', { 'a/done': { at: at(1), says: 'x'.repeat(longestLine + 1) } }, 'NOT_A_LINE'],
    [
      'too many',
      Object.fromEntries(Array.from({ length: mostLines + 1 }, (_, n) => [`n${n}`, line])),
      'TOO_MANY_LINES',
    ],
  ])('%s is refused', (_, given: unknown, code) => {
    const sheet = sheetFrom(given, points, now);
    expect(sheet.ok ? [] : sheet.error.map((one) => one.code)).toEqual([code]);
  });
});

describe('judged', () => {
  const { sequence } = walls.find(
    ({ name }) =>
      name ===
      'base-of-wall backing=steel-stud edge=held-back joint=seam corner=none weather=normal',
  )!;
  const passMark = quantity(85, '%');
  const says = (lines: Readonly<Record<string, string>>): CheckSheet =>
    Object.fromEntries(
      Object.entries(lines).map(([name, said]) => [name, { at: at(1), says: said }]),
    );
  const turnUp = 'snap-line/setting/turn-up';

  test('a measure is judged as it was written, in the notation of the trade', () => {
    const rightness = (value: string) => {
      const judged = judgedSheet(sequence, passMark, says({ [turnUp]: value }));
      return judged.ok && judged.value.judged.find(({ point }) => point.id === turnUp)?.right;
    };
    expect(['8 in', '0\'-8 1/4"', '203.2 mm', '7 15/16 in', '20 cm'].map(rightness)).toEqual([
      true,
      true,
      true,
      false,
      false,
    ]);
  });

  test('a line that cannot be read is told, and judged neither way', () => {
    const watched = witnessPoints(sequence).find((point) => !isMeasured(point))!;
    const judged = judgedSheet(
      sequence,
      passMark,
      says({
        [turnUp]: 'eight',
        [watched.id]: 'perhaps',
        [weatherLine('air-temperature')]: '8 in',
      }),
    );
    expect(judged.ok ? [] : judged.error.map(({ line }) => line).toSorted()).toEqual(
      [turnUp, watched.id, weatherLine('air-temperature')].toSorted(),
    );
  });

  test('a line that is blank was not seen', () => {
    const judged = judgedSheet(sequence, passMark, says({ [turnUp]: '  ' }));
    expect(judged.ok && judged.value.result.unseen.some(({ id }) => id === turnUp)).toBe(true);
  });

  test('a colder wall as measured asks for a longer wait', () => {
    const cold = says({
      [weatherLine('air-temperature')]: '45 °F',
      [weatherLine('surface-temperature')]: '45 °F',
    });
    expect(weatherIn(cold).size).toBe(2);
    const waits = (sheet: CheckSheet) =>
      pointsUnder(sequence, sheet).flatMap((point) =>
        point.kind === 'wait' && point.rule.kind === 'at-least' ? [point.rule.value.value] : [],
      );
    const [usual, colder] = [waits({}), waits(cold)];
    expect(usual.length).toBeGreaterThan(0);
    expect(colder.some((value, place) => value.gt(usual[place]!))).toBe(true);
  });
});
