import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { addPeriod } from '#engine/calendar.ts';
import { holdingStates } from '#engine/competence/qualification-state.ts';
import * as board from '#server/board/board.ts';
import { coverageOf, endings } from '#server/board/coverage-of.ts';
import { schemesNow } from '#server/board/qualifications.ts';
import type { Scheme } from '#engine/exam/scheme.ts';
import type { Act } from '#server/people/member.ts';
import { at, freshCompany } from '../people/company.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { crewed, daysFrom, today } from './crewed.ts';

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let act: Act;
  let schemes: readonly Scheme[];
  beforeAll(async () => {
    records = await freshRecords(kind);
    act = await freshCompany(records.db);
    schemes = await schemesNow();
    const ids = schemes.map(({ id }) => id);
    await crewed(records.db, act, 40, ids, []);
  });
  afterAll(() => records.drop());

  test('it starts from those whom the board shows as holding', async () => {
    const { db } = records;
    const covered = await coverageOf(db, act.by.company, at, schemes);
    const counted = await board.counts(db, act.by.company, at, schemes, holdingStates);
    for (const { id } of schemes) {
      const { current = 0, due = 0 } = counted.get(id)!;
      expect(covered.get(id)!.levels[0]!.people).toBe(current + due);
      expect(current + due).toBeGreaterThan(3);
    }
  });

  test('the board of a later day shows what the coverage foretold for it', async () => {
    const { db } = records;
    const covered = await coverageOf(db, act.by.company, at, schemes);
    for (const days of [45, 200, 330]) {
      const then = daysFrom(days);
      const counted = await board.counts(
        db,
        act.by.company,
        `${then}T07:30:00.000Z`,
        schemes,
        holdingStates,
      );
      for (const { id } of schemes) {
        const level = covered.get(id)!.levels.findLast(({ from }) => from <= then)!;
        const { current = 0, due = 0 } = counted.get(id)!;
        expect(level.people).toBe(current + due);
      }
    }
  });

  test('those who lapse within a span are as many as the months say, the soonest first', async () => {
    const covered = await coverageOf(records.db, act.by.company, at, schemes);
    const through = addPeriod(
      addPeriod(today, { count: 12, unit: 'months' }),
      { count: 1, unit: 'days' },
      -1,
    );
    const rows = await endings(records.db, act.by.company, at, through, 1000);
    const ends = rows.map(({ until }) => until);
    expect(ends).toEqual(ends.toSorted());
    for (const { id } of schemes) {
      const ending = covered.get(id)!.months.reduce((sum, month) => sum + month.ending, 0);
      expect(rows.filter(({ scheme }) => scheme === id)).toHaveLength(ending);
    }
    expect(await endings(records.db, act.by.company, at, through, 2)).toEqual(rows.slice(0, 2));
  });
});
