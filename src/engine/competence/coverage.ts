/**
 * How many hold a qualification over the months ahead if nobody renews, and on which days it goes down. A
 * certificate counts to its last day, that day included. Costs one sort of the days on which some end.
 */
import { addPeriod, type IsoDate } from '#engine/calendar.ts';

/** So many certificates that hold on the first day have their last day on `until`. */
export type Ends = { readonly until: IsoDate; readonly people: number };

/** From that day on so many hold it. */
export type Level = { readonly from: IsoDate; readonly people: number };

export type Month = {
  readonly from: IsoDate;
  /** The day before the next one begins. */
  readonly through: IsoDate;
  /** On its first day. */
  readonly atStart: number;
  /** Whose last day is in it. */
  readonly ending: number;
};

export type Coverage = { readonly levels: readonly Level[]; readonly months: readonly Month[] };

/** Months are counted from the first day, which keeps its day of the month; ends before it are left out. */
export function coverage(ends: readonly Ends[], from: IsoDate, count = 12): Coverage {
  const sorted = ends
    .filter(({ until, people }) => until >= from && people > 0)
    .toSorted((a, b) => (a.until < b.until ? -1 : a.until > b.until ? 1 : 0));
  const starts = Array.from({ length: count + 1 }, (_, at) =>
    addPeriod(from, { count: at, unit: 'months' }),
  );
  const horizon = starts[count]!;
  const total = sorted.reduce((sum, { people }) => sum + people, 0);
  const levels: Level[] = [{ from, people: total }];
  for (const { until, people } of sorted) {
    const next = nextDay(until);
    const last = levels.at(-1)!;
    if (next >= horizon) break;
    if (last.from === next)
      levels[levels.length - 1] = { from: next, people: last.people - people };
    else levels.push({ from: next, people: last.people - people });
  }
  const months = starts.slice(0, count).map((start, at) => {
    const through = addPeriod(starts[at + 1]!, { count: 1, unit: 'days' }, -1);
    const inMonth = sorted.filter(({ until }) => start <= until && until <= through);
    return {
      from: start,
      through,
      atStart: sorted.reduce((sum, { until, people }) => sum + (until >= start ? people : 0), 0),
      ending: inMonth.reduce((sum, { people }) => sum + people, 0),
    };
  });
  return { levels, months };
}

const nextDay = (day: IsoDate): IsoDate => addPeriod(day, { count: 1, unit: 'days' });
