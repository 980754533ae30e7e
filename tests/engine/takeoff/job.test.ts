import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { csv } from '#engine/takeoff/csv.ts';
import { jobCsv } from '#engine/takeoff/job-csv.ts';
import { fieldFaults, jobFields, workJob } from '#engine/takeoff/job.ts';
import { takeoff } from './shipped.ts';

const takeoffs = [takeoff('whole-wall'), takeoff('weeps-in-wall'), takeoff('end-dams')];
const fields = jobFields(takeoffs.map(({ family }) => family));
const keyOf = (id: string): string => fields.find(({ entry }) => entry.id === id)?.key ?? id;

const house: Readonly<Record<string, string>> = {
  run: `128'-6"`,
  inside: '1',
  outside: '2',
  ends: '2',
  'turn-up': '8 1/2 in',
  shelf: '4 in',
  edge: 'no',
  backing: 'steel studs',
  'stud-spacing': '16',
  'weep-kind': 'yes',
  kind: 'yes',
  openings: '4',
  opening: '6 ft',
  bearing: '8',
};

const entered = (entries: Readonly<Record<string, string>>) =>
  Object.fromEntries(Object.entries(entries).map(([id, text]) => [keyOf(id), text]));

const sheetsOf = (entries: Readonly<Record<string, string>>) =>
  workJob(takeoffs, entered(entries)).flatMap(({ sheet }) => (sheet.ok ? [sheet.value] : []));

describe('truth', () => {
  it('what two take-offs ask alike is entered once', () => {
    const run = fields.filter(({ entry }) => entry.id === 'run');
    expect(run.map(({ families }) => families)).toEqual([['whole-wall', 'weeps-in-wall']]);
  });

  it('each take-off is worked out as soon as it has what it needs', () => {
    const { run, kind } = house;
    expect(sheetsOf({ run: run!, kind: kind! }).map(({ problem }) => problem.title.en)).toEqual([
      'Weeps in a wall',
    ]);
    expect(sheetsOf(house)).toHaveLength(3);
  });

  it('a fault stands at the field that mends it', () => {
    const parts = workJob(takeoffs, entered({ ...house, 'turn-up': '7 in', openings: 'few' }));
    expect(fieldFaults(parts).map(({ key, fault }) => [key, fault.code])).toEqual([
      [keyOf('turn-up'), 'NEED'],
      [keyOf('openings'), 'UNREADABLE'],
    ]);
  });

  it('the list is written as one table of comma-separated values', () => {
    const rows = jobCsv('North "gable", lot 4', sheetsOf(house), 'en').split('\r\n');
    expect(rows[0]).toBe(',Take-off,Item,Amount,Before rounding,Working');
    expect(rows[1]).toBe('Job,,"North ""gable"", lot 4",,,');
    expect(rows).toContain(`Entered,A whole wall,Run of the wall,"128'-6""",,`);
    expect(
      rows.some((row) => row.startsWith('Needed,A whole wall,Rolls of membrane,3 rolls,2.794,')),
    ).toBe(true);
    expect(rows.at(-1)).toBe('');
    expect(jobCsv('', sheetsOf(house), 'es')).toContain('Rollos de membrana,3 rollos,');
  });
});

describe('laws', () => {
  it('no cell can be taken for a formula', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const [first = ''] = csv([[text]]).replace(/^"/, '');
        const isNumber = /^-?\d+(\.\d+)?$/.test(text);
        expect(isNumber || !'=+-@\t\r'.includes(first) || text === '').toBe(true);
      }),
    );
  });

  it.each(['=1+1', '+1', '-x', '@SUM(A1)', '\t=1', '-5 °F'])('%j gets an apostrophe', (text) => {
    expect(csv([[text]])).toBe(`'${text}\r\n`);
  });

  it('a plain number stays a number', () => {
    expect(csv([['-5', '12.5']])).toBe('-5,12.5\r\n');
  });
});
