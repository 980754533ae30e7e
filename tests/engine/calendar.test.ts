import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  addPeriod,
  daysBetween,
  isoDateFrom,
  type IsoDate,
  type Period,
  type PeriodUnit,
} from '#engine/calendar.ts';

const day = (text: string): IsoDate => {
  const date = isoDateFrom(text);
  if (!date.ok) throw new Error(text);
  return date.value;
};

const of = (count: number, unit: PeriodUnit): Period => ({ count, unit });

const anyDay = fc
  .integer({ min: 0, max: 146_097 * 2 })
  .map((days) => new Date(Date.UTC(1800, 0, 1 + days)).toISOString().slice(0, 10) as IsoDate);

describe('truth', () => {
  test.each([
    ['2026-02-29', false],
    ['2024-02-29', true],
    ['1900-02-29', false],
    ['2000-02-29', true],
    ['2026-13-01', false],
    ['2026-00-10', false],
    ['2026-04-31', false],
    ['2026-4-3', false],
    ['0000-01-01', false],
    ['2026-11-25T00:00:00Z', false],
  ])('%s is a day: %s', (text, isDay) => {
    expect(isoDateFrom(text).ok).toBe(isDay);
  });

  test.each([
    ['2026-01-31', of(1, 'months'), '2026-02-28'],
    ['2024-01-31', of(1, 'months'), '2024-02-29'],
    ['2026-01-31', of(2, 'months'), '2026-03-31'],
    ['2026-08-31', of(6, 'months'), '2027-02-28'],
    ['2026-12-15', of(1, 'months'), '2027-01-15'],
    ['2024-02-29', of(1, 'years'), '2025-02-28'],
    ['2024-02-29', of(4, 'years'), '2028-02-29'],
    ['2026-02-28', of(2, 'days'), '2026-03-02'],
    ['2026-12-25', of(2, 'weeks'), '2027-01-08'],
    ['2026-11-30', of(24, 'months'), '2028-11-30'],
  ])('%s and %o is %s', (from, period, to) => {
    expect(addPeriod(day(from), period)).toBe(to);
  });

  test.each([
    ['2026-03-31', of(1, 'months'), '2026-02-28'],
    ['2026-01-15', of(1, 'months'), '2025-12-15'],
    ['2026-05-31', of(6, 'months'), '2025-11-30'],
    ['2026-03-01', of(1, 'days'), '2026-02-28'],
    ['2028-02-29', of(3, 'years'), '2025-02-28'],
  ])('%s less %o is %s', (from, period, to) => {
    expect(addPeriod(day(from), period, -1)).toBe(to);
  });

  test('months one by one lose the day that a longer span keeps', () => {
    const once = addPeriod(day('2026-01-31'), of(2, 'months'));
    const twice = addPeriod(addPeriod(day('2026-01-31'), of(1, 'months')), of(1, 'months'));
    expect([once, twice]).toEqual(['2026-03-31', '2026-03-28']);
  });

  test('a day outside the years 1 to 9999 cannot be written', () => {
    expect(() => addPeriod(day('9999-12-31'), of(1, 'days'))).toThrow(RangeError);
    expect(() => addPeriod(day('0001-01-31'), of(1, 'months'), -1)).toThrow(RangeError);
  });
});

describe('laws', () => {
  test('days are counted as a machine counts them', () => {
    fc.assert(
      fc.property(anyDay, fc.integer({ min: -5000, max: 5000 }), (from, days) => {
        const there = new Date(Date.parse(`${from}T00:00:00Z`) + days * 86_400_000);
        const found = addPeriod(from, of(Math.abs(days), 'days'), days < 0 ? -1 : 1);
        expect(found).toBe(there.toISOString().slice(0, 10));
        expect(daysBetween(from, found)).toBe(days);
      }),
    );
  });

  test('a later day is never moved before an earlier one', () => {
    const units = fc.constantFrom<PeriodUnit>('days', 'weeks', 'months', 'years');
    fc.assert(
      fc.property(
        anyDay,
        anyDay,
        fc.nat(60),
        units,
        fc.constantFrom(1 as const, -1 as const),
        (a, b, count, unit, way) => {
          const [first, second] = a < b ? [a, b] : [b, a];
          const moved = [first, second].map((each) => addPeriod(each, of(count, unit), way));
          expect(moved[0]! <= moved[1]!).toBe(true);
          expect(isoDateFrom(moved[0]!).ok).toBe(true);
        },
      ),
    );
  });

  test('so many months later lies in that month, on that day or on its last', () => {
    fc.assert(
      fc.property(anyDay, fc.nat(400), (from, count) => {
        const to = addPeriod(from, of(count, 'months'));
        const months = (date: string): number =>
          Number(date.slice(0, 4)) * 12 + Number(date.slice(5, 7));
        expect(months(to) - months(from)).toBe(count);
        const isSame = to.slice(8) === from.slice(8);
        const isLast = addPeriod(to, of(1, 'days')).slice(8) === '01';
        expect(isSame || (isLast && to.slice(8) < from.slice(8))).toBe(true);
      }),
    );
  });
});
