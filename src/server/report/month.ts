import { addPeriod, isoDateFrom, type IsoDate } from '#engine/calendar.ts';

/** A month of the calendar, both days included. */
export type ReportMonth = { readonly from: IsoDate; readonly through: IsoDate };

/** Of `2030-04`; the month of `today` for anything else. */
export function monthFrom(text: string, today: IsoDate): ReportMonth {
  const asked = isoDateFrom(`${text}-01`);
  const own = isoDateFrom(`${today.slice(0, 7)}-01`);
  if (!own.ok) throw new RangeError(`${today} is no day.`);
  const from = asked.ok ? asked.value : own.value;
  const next = addPeriod(from, { count: 1, unit: 'months' });
  return { from, through: addPeriod(next, { count: 1, unit: 'days' }, -1) };
}
