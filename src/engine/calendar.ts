/**
 * Days of the calendar without clock or time zone: whoever asks says which day it is. The count of days
 * is that of the proleptic Gregorian calendar (ISO 8601), by shifting the year to begin in March, so
 * that the leap day comes last. Constant time.
 */
import { fault, ok, type Result } from './result.ts';

declare const made: unique symbol;

/** A day as `2026-03-01`, from year 1 to 9999. Two of them compare as texts do. */
export type IsoDate = string & { readonly [made]: 'day' };

export const periodUnits = ['days', 'weeks', 'months', 'years'] as const;
export type PeriodUnit = (typeof periodUnits)[number];

/** A span of the calendar; of months and years, how many days it is depends on where it begins. */
export type Period = { readonly count: number; readonly unit: PeriodUnit };

const form = /^(\d{4})-(\d{2})-(\d{2})$/;
const lengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

const isLeap = (year: number): boolean => year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);

/** Of a month from 1 to 12. */
const daysIn = (year: number, month: number): number =>
  month === 2 && isLeap(year) ? 29 : (lengths[month - 1] ?? 0);

export function isoDateFrom(text: string): Result<IsoDate, 'NOT_A_DAY'> {
  const [, year = 0, month = 0, day = 0] = (form.exec(text) ?? []).map(Number);
  const isDay = year >= 1 && month >= 1 && month <= 12 && day >= 1 && day <= daysIn(year, month);
  return isDay ? ok(text as IsoDate) : fault('NOT_A_DAY');
}

type Parts = { readonly year: number; readonly month: number; readonly day: number };

const partsOf = (date: IsoDate): Parts => {
  const [year = 0, month = 0, day = 0] = date.split('-').map(Number);
  return { year, month, day };
};

function written({ year, month, day }: Parts): IsoDate {
  if (year < 1 || year > 9999) throw new RangeError(`The year ${year} has not four digits.`);
  const two = (part: number): string => String(part).padStart(2, '0');
  return `${String(year).padStart(4, '0')}-${two(month)}-${two(day)}` as IsoDate;
}

/** Days since 1970-01-01. */
function dayNumber({ year, month, day }: Parts): number {
  const shifted = month > 2 ? year : year - 1;
  const era = Math.floor(shifted / 400);
  const inEra = shifted - era * 400;
  const inYear = Math.floor((153 * ((month + 9) % 12) + 2) / 5) + day - 1;
  return (
    era * 146097 + inEra * 365 + Math.floor(inEra / 4) - Math.floor(inEra / 100) + inYear - 719468
  );
}

function dayOf(number: number): IsoDate {
  const shifted = number + 719468;
  const era = Math.floor(shifted / 146097);
  const inEra = shifted - era * 146097;
  const yearOfEra = Math.floor(
    (inEra - Math.floor(inEra / 1460) + Math.floor(inEra / 36524) - Math.floor(inEra / 146096)) /
      365,
  );
  const leaps = Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100);
  const inYear = inEra - (365 * yearOfEra + leaps);
  const shiftedMonth = Math.floor((5 * inYear + 2) / 153);
  const day = inYear - Math.floor((153 * shiftedMonth + 2) / 5) + 1;
  const month = shiftedMonth < 10 ? shiftedMonth + 3 : shiftedMonth - 9;
  return written({ year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0), month, day });
}

/**
 * The day a period later, or earlier where `direction` is -1. Months and years keep the day of the
 * month; where that month is shorter, its last day stands: one month after 31 January is 28 or 29
 * February. Add a longer period at once and not month by month, or the day is lost on the way. Throws
 * a RangeError outside the years 1 to 9999.
 */
export function addPeriod(date: IsoDate, period: Period, direction: 1 | -1 = 1): IsoDate {
  const count = period.count * direction;
  if (period.unit === 'days') return dayOf(dayNumber(partsOf(date)) + count);
  if (period.unit === 'weeks') return dayOf(dayNumber(partsOf(date)) + 7 * count);
  const { year, month, day } = partsOf(date);
  const months = year * 12 + (month - 1) + count * (period.unit === 'years' ? 12 : 1);
  const then = { year: Math.floor(months / 12), month: (months % 12) + 1 };
  return written({ ...then, day: Math.min(day, daysIn(then.year, then.month)) });
}

/** Below 0 where `to` comes first. */
export const daysBetween = (from: IsoDate, to: IsoDate): number =>
  dayNumber(partsOf(to)) - dayNumber(partsOf(from));

export const laterOf = (a: IsoDate, b: IsoDate): IsoDate => (a > b ? a : b);
