import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { qualificationStates } from '#engine/competence/qualification-state.ts';
import * as board from '#server/board/board.ts';
import { schemesNow } from '#server/board/qualifications.ts';
import type { Scheme } from '#engine/exam/scheme.ts';
import type { Act } from '#server/people/member.ts';
import * as people from '#server/people/people.ts';
import { added, at, freshCompany } from '../people/company.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { apply, certify, crewed, crewNamed, daysFrom, practise } from './crewed.ts';

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let act: Act;
  let schemes: readonly Scheme[];
  beforeAll(async () => {
    records = await freshRecords(kind);
    act = await freshCompany(records.db);
    schemes = await schemesNow();
    const methods = new Set(schemes.flatMap(({ covers }) => [...covers.keys()]));
    const ids = schemes.map(({ id }) => id);
    await crewed(records.db, act, 60, ids, [...methods]);
  });
  afterAll(() => records.drop());

  const pageOf = (asked: board.Asked) =>
    board.page(records.db, act.by.company, at, schemes, { most: 1000, ...asked });

  test('columns come in the order in which one leads to the next', () => {
    expect(schemes.map(({ id }) => id)).toEqual([
      'base-of-wall-installer',
      'corners-and-seams',
      'crew-lead',
    ]);
  });

  test('everybody who is there has a row with a cell for each qualification', async () => {
    const { rows, next } = await pageOf({});
    expect(rows).toHaveLength(61);
    expect(next).toBeUndefined();
    expect(rows.every(({ cells }) => cells.length === schemes.length)).toBe(true);
  });

  test('every state is in the sample, so that what follows can fail', async () => {
    const { rows } = await pageOf({});
    const found = new Set(rows.flatMap(({ cells }) => cells.map(({ state }) => state)));
    expect([...found].toSorted()).toEqual([...qualificationStates].toSorted());
  });

  test.each(qualificationStates)(
    'a page filtered by %s has those of whom the engine says it, by qualification and in any',
    async (state) => {
      const { rows } = await pageOf({});
      for (const [place, { id }] of schemes.entries()) {
        const expected = rows.filter(({ cells }) => cells[place]!.state === state);
        const found = await pageOf({ qualification: id, state });
        expect(found.rows).toEqual(expected);
      }
      const any = rows.filter(({ cells }) => cells.some((cell) => cell.state === state));
      expect((await pageOf({ state })).rows).toEqual(any);
    },
  );

  test('the counts are of the same', async () => {
    const { rows } = await pageOf({});
    const counted = await board.counts(
      records.db,
      act.by.company,
      at,
      schemes,
      qualificationStates,
    );
    for (const [place, { id }] of schemes.entries()) {
      for (const state of qualificationStates) {
        const expected = rows.filter(({ cells }) => cells[place]!.state === state).length;
        expect(counted.get(id)![state]).toBe(expected);
      }
    }
  });

  test.each(['crew', 'name', 'end'] as const)(
    'by %s, page after page gives everybody once, as one long page does',
    async (order) => {
      const asked = { order, qualification: schemes[0]!.id };
      const whole = (await pageOf(asked)).rows;
      const found: board.BoardRow[] = [];
      for (let after: string | undefined, more = true; more;) {
        const { rows, next } = await pageOf({ ...asked, most: 7, after });
        found.push(...rows);
        after = next;
        more = next !== undefined;
      }
      expect(found).toEqual(whole);
      expect(whole.length).toBeGreaterThan(order === 'end' ? 10 : 60);
    },
  );

  test('crews come by name, those in none at the end', async () => {
    const crews = (await pageOf({})).rows.map(({ crewName }) => crewName);
    const first = [...new Set(crews)];
    expect(first).toEqual(['North', 'South', 'West', null]);
    expect(crews).toEqual(crews.toSorted((a, b) => first.indexOf(a) - first.indexOf(b)));
  });

  test('by end, the soonest last day comes first, and only those who hold it are there', async () => {
    const { rows } = await pageOf({ order: 'end', qualification: 'crew-lead' });
    const ends = rows.map(({ cells }) => cells[2]!.certificate!.validUntil);
    expect(ends).toEqual(ends.toSorted());
  });

  test('search, crew and state narrow it together', async () => {
    const { rows } = await pageOf({ search: 'ada', crew: 'none', state: 'current' });
    expect(rows.every(({ name, crew }) => name.startsWith('Ada') && crew === null)).toBe(true);
    const none = await pageOf({ state: 'current', qualification: 'unheard-of' });
    expect(none.rows).toEqual([]);
    const odd = await pageOf({ search: `%' or 1=1 --` });
    expect(odd.rows).toEqual([]);
  });
});

describe.each(kinds)('%s, one person', (kind) => {
  let records: Records;
  let act: Act;
  let schemes: readonly Scheme[];
  beforeAll(async () => {
    records = await freshRecords(kind);
    act = await freshCompany(records.db);
    schemes = await schemesNow();
  });
  afterAll(() => records.drop());

  const cellsOf = async (person: string) =>
    (await board.one(records.db, act.by.company, at, schemes, person))?.cells.map(
      ({ state }) => state,
    );

  test('practice of a covered wall is training for what one may take, and fades', async () => {
    const { db } = records;
    const person = await added(db, act, { name: 'Ana' });
    await practise(db, act, person, 'base-of-wall', daysFrom(-10));
    expect(await cellsOf(person)).toEqual(['in-training', 'none', 'none']);
    const row = await board.one(db, act.by.company, at, schemes, person);
    expect(row!.cells[0]!.fade).toMatchObject({ last: daysFrom(-10), advice: 'fresh' });
    await certify(db, act, {
      person,
      scheme: 'base-of-wall-installer',
      validUntil: daysFrom(800),
    });
    expect(await cellsOf(person)).toEqual(['current', 'in-training', 'none']);
  });

  test('an application is training, and what is suspended is shown at once', async () => {
    const { db } = records;
    const person = await added(db, act, { name: 'Ben' });
    await apply(db, act, person, 'crew-lead');
    expect(await cellsOf(person)).toEqual(['none', 'none', 'in-training']);
    await certify(db, act, {
      person,
      scheme: 'crew-lead',
      state: 'suspended',
      validUntil: daysFrom(800),
    });
    expect(await cellsOf(person)).toEqual(['none', 'none', 'suspended']);
  });

  test('who left is not on the board, and nobody of another company is', async () => {
    const { db } = records;
    const other = await freshCompany(db);
    const crew = await crewNamed(db, other, 'Elsewhere');
    const stranger = await added(db, other, { name: 'Cyd', crew });
    expect(await cellsOf(stranger)).toBeUndefined();
    const gone = await added(db, act, { name: 'Dee' });
    await people.leave(db, act, gone);
    expect(await cellsOf(gone)).toBeUndefined();
    const { rows } = await board.page(db, act.by.company, at, schemes, { most: 1000 });
    expect(rows.map(({ id }) => id)).not.toContain(gone);
    expect(rows.map(({ id }) => id)).not.toContain(stranger);
  });
});
