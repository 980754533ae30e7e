import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addPeriod, isoDateFrom, type IsoDate } from '#engine/calendar.ts';
import { coverage } from '#engine/competence/coverage.ts';

const day = (text: string): IsoDate => {
  const read = isoDateFrom(text);
  if (!read.ok) throw new Error(text);
  return read.value;
};
const from = day('2030-01-31');
const later = (count: number): IsoDate => addPeriod(from, { count, unit: 'days' });

describe('truth', () => {
  const ends = [
    { until: day('2030-03-10'), people: 2 },
    { until: day('2030-02-28'), people: 1 },
    { until: day('2032-01-01'), people: 4 },
    { until: day('2030-01-30'), people: 9 },
  ];

  test('the level goes down on the day after a last day', () => {
    expect(coverage(ends, from).levels).toEqual([
      { from: '2030-01-31', people: 7 },
      { from: '2030-03-01', people: 6 },
      { from: '2030-03-11', people: 4 },
    ]);
  });

  test('months begin on the day of the month they are counted from, and say how many end in them', () => {
    const { months } = coverage(ends, from);
    expect(months).toHaveLength(12);
    expect(months.slice(0, 3)).toEqual([
      { from: '2030-01-31', through: '2030-02-27', atStart: 7, ending: 0 },
      { from: '2030-02-28', through: '2030-03-30', atStart: 7, ending: 3 },
      { from: '2030-03-31', through: '2030-04-29', atStart: 4, ending: 0 },
    ]);
    expect(months.at(-1)).toMatchObject({ through: '2031-01-30', atStart: 4, ending: 0 });
  });

  test('nobody gives a level of nobody', () => {
    expect(coverage([], from).levels).toEqual([{ from, people: 0 }]);
  });
});

describe('laws', () => {
  const ends = fc.array(
    fc.record({
      until: fc.integer({ min: -30, max: 500 }).map(later),
      people: fc.integer({ min: 1, max: 9 }),
    }),
    { maxLength: 30 },
  );

  test('on every day of the year the level is how many have their last day then or later', () => {
    fc.assert(
      fc.property(ends, fc.integer({ min: 0, max: 364 }), (all, at) => {
        const on = later(at);
        const level = coverage(all, from).levels.findLast(({ from: start }) => start <= on);
        const held = all.reduce((sum, { until, people }) => sum + (until >= on ? people : 0), 0);
        expect(level?.people).toBe(held);
      }),
    );
  });

  test('each month leads to the next, and to no day twice', () => {
    fc.assert(
      fc.property(ends, (all) => {
        const { months } = coverage(all, from);
        months.slice(1).forEach((month, at) => {
          const before = months[at]!;
          expect(month.atStart).toBe(before.atStart - before.ending);
          expect(month.from).toBe(addPeriod(before.through, { count: 1, unit: 'days' }));
        });
      }),
    );
  });
});
