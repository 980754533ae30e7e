import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { verify } from '#server/audit/audit-trail.ts';
import * as crews from '#server/people/crews.ts';
import type { Act } from '#server/people/member.ts';
import * as people from '#server/people/people.ts';
import * as roster from '#server/people/roster/roster.ts';
import { freshRecords, kinds, type Records } from '../../records.ts';
import { added, deeds, freshCompany } from '../company.ts';

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let act: Act;
  beforeAll(async () => {
    records = await freshRecords(kind);
  });
  beforeEach(async () => {
    act = await freshCompany(records.db);
  });
  afterAll(() => records.drop());

  const planOf = async (text: string) => {
    const plan = await roster.preview(records.db, act.by.company, text);
    if (!plan.ok) throw new Error(plan.error.code);
    return plan.value;
  };
  const statesOf = async (text: string) => (await planOf(text)).rows.map(({ state }) => state);
  const write = async (text: string, leaveOut = false) =>
    roster.write(records.db, act, text, { digest: (await planOf(text)).digest, leaveOut });
  const rowsKept = () =>
    records.db
      .selectFrom('person')
      .select(['name', 'number', 'roles', 'language', 'email', 'crew_id', 'left_at'])
      .where('company_id', '=', act.by.company)
      .where('id', '!=', act.by.person)
      .orderBy('search')
      .execute();

  const file = [
    'name,number,crew,roles,language,email',
    'Ana López,17,North,"apprentice, trainer",es,ana@site.example',
    'Eva,,north,,,',
    'Juan,A-3,,,en,',
  ].join('\n');

  test('a preview writes nothing; writing adds people and crews, all in the audit trail', async () => {
    const { db } = records;
    const plan = await planOf(file);
    expect(plan.rows.map(({ row, state }) => [row, state])).toEqual([
      [2, 'new'],
      [3, 'new'],
      [4, 'new'],
    ]);
    expect(plan.crews).toEqual(['North']);
    expect(await rowsKept()).toEqual([]);
    expect(await crews.list(db, act.by.company)).toEqual([]);

    expect(await write(file)).toEqual({ ok: true, value: { added: 3, changed: 0, crews: 1 } });
    const [north] = await crews.list(db, act.by.company);
    expect(north).toMatchObject({ name: 'North', people: 2 });
    expect(await rowsKept()).toMatchObject([
      { name: 'Ana López', number: '17', roles: 'apprentice trainer', email: 'ana@site.example' },
      { name: 'Eva', number: null, roles: 'apprentice', crew_id: north?.id },
      { name: 'Juan', number: 'A-3', language: 'en', crew_id: null },
    ]);
    expect(await deeds(db, act.by.company)).toEqual([
      'found company',
      'make crew',
      'add person',
      'add person',
      'add person',
    ]);
    expect(await verify(db, act.by.company)).toMatchObject({ faults: [] });
  });

  test('the same file a second time changes nothing', async () => {
    await write(file);
    const before = await deeds(records.db, act.by.company);
    expect(await statesOf(file)).toEqual(['unchanged', 'unchanged', 'unchanged']);
    expect(await write(file)).toEqual({ ok: true, value: { added: 0, changed: 0, crews: 0 } });
    expect(await deeds(records.db, act.by.company)).toEqual(before);
  });

  test('a change is told by what it changes, and an empty cell changes nothing', async () => {
    await write(file);
    const next = 'number,name,crew,roles\n17,Ana M. López,South,\n,EVA,,trainer\nA-3,Juan,,';
    const plan = await planOf(next);
    expect(plan.rows.map(({ state, changes }) => [state, changes])).toEqual([
      [
        'changed',
        [
          { field: 'name', from: 'Ana López', to: 'Ana M. López' },
          { field: 'crew', from: 'North', to: 'South' },
        ],
      ],
      [
        'changed',
        [
          { field: 'name', from: 'Eva', to: 'EVA' },
          { field: 'roles', from: 'apprentice', to: 'trainer' },
        ],
      ],
      ['unchanged', []],
    ]);
    expect(plan.crews).toEqual(['South']);
    expect(await write(next)).toMatchObject({ value: { changed: 2, crews: 1 } });
    expect(await rowsKept()).toMatchObject([
      { name: 'Ana M. López', roles: 'apprentice trainer', email: 'ana@site.example' },
      { name: 'EVA', roles: 'trainer' },
      { name: 'Juan' },
    ]);
    expect(await statesOf(next)).toEqual(['unchanged', 'unchanged', 'unchanged']);
  });

  test('somebody without a number gets one by the name, and a namesake with another is somebody new', async () => {
    await write('name,number\nAna,\nEva,1');
    expect(await statesOf('name,number\nána,7\nEva,2')).toEqual(['changed', 'new']);
  });

  test('who cannot be told apart is a fault, and so is who stands in the file twice', async () => {
    const { db } = records;
    await added(db, act, { name: 'Ana' });
    await added(db, act, { name: 'Ana' });
    const plan = await planOf('name,number\nAna,\nEva,1\nEva,1\nJuan,\nJUAN,\nPía,3\npía,');
    expect(plan.rows.map(({ row, faults }) => [row, faults])).toEqual([
      [2, [{ column: 'name', code: 'AMBIGUOUS' }]],
      [3, []],
      [4, [{ column: 'number', code: 'TWICE', row: 3 }]],
      [5, []],
      [6, [{ column: 'name', code: 'TWICE', row: 5 }]],
      [7, []],
      [8, []],
    ]);
  });

  test('nothing is written while a row is faulty, unless the faulty ones are left out', async () => {
    const faulty = 'name,crew,language\nAna,North,en\nEva,South,french';
    expect(await write(faulty)).toMatchObject({ ok: false, error: { code: 'FAULTY' } });
    expect(await rowsKept()).toEqual([]);
    expect((await planOf(faulty)).crews).toEqual(['North']);
    expect(await write(faulty, true)).toEqual({
      ok: true,
      value: { added: 1, changed: 0, crews: 1 },
    });
    expect(await rowsKept()).toMatchObject([{ name: 'Ana' }]);
  });

  test('what was changed meanwhile is shown anew before it is written', async () => {
    const text = 'name,number\nAna,1';
    const { digest } = await planOf(text);
    await added(records.db, act, { name: 'Ana M.', number: '1' });
    const done = await roster.write(records.db, act, text, { digest, leaveOut: true });
    expect(done).toMatchObject({
      ok: false,
      error: { code: 'CHANGED', plan: { rows: [{ state: 'changed' }] } },
    });
  });

  test('who had left comes back, and into no crew that is closed', async () => {
    const { db } = records;
    const made = await crews.create(db, act, { name: 'North' });
    const crew = made.ok ? made.value : '';
    const gone = await added(db, act, { name: 'Ana', number: '1', crew });
    await people.leave(db, act, gone);
    await crews.close(db, act, crew, null);
    const text = 'name,number\nAna,1';
    expect((await planOf(text)).rows[0]).toMatchObject({
      state: 'changed',
      changes: [{ field: 'back', to: null }],
    });
    await write(text);
    expect(await rowsKept()).toMatchObject([{ name: 'Ana', left_at: null, crew_id: null }]);
  });

  test('no roster takes the last of the office who can sign in away', async () => {
    const plan = await planOf('name,roles\nOffice,trainer\nAna,office');
    expect(plan.rows).toMatchObject([
      { state: 'faulty', faults: [{ column: 'roles', code: 'LAST_OFFICE' }] },
      { state: 'new' },
    ]);
  });

  test.each(['en', 'es'] as const)(
    'what is exported in %s reads in as unchanged, formulas made harmless',
    async (language) => {
      const { db } = records;
      const text = [
        'name,number,crew,roles,language,email',
        `"López, Ana",-5,North,"apprentice, examiner",es,ana@site.example`,
        `+Eva,'-6,,trainer,en,`,
        `'Juan,,'+South,,,`,
      ].join('\n');
      await write(text);
      const written = await roster.exported(db, act.by.company, language);
      expect(written.charCodeAt(0)).toBe(0xfeff);
      expect(written).toContain(`"López, Ana",'-5,North`);
      expect(written).toMatch(/^'\+Eva,/m);
      expect(written).not.toMatch(/(^|,)"?[=+\-@\t]/m);
      expect(new Set(await statesOf(written))).toEqual(new Set(['unchanged']));
    },
  );

  test('another company is neither read nor written', async () => {
    await write(file);
    const mine = act;
    act = await freshCompany(records.db);
    expect(await statesOf(file)).toEqual(['new', 'new', 'new']);
    expect(await roster.exported(records.db, act.by.company, 'en')).not.toContain('Ana');
    act = mine;
  });

  test('ten thousand rows are written in one go', async () => {
    const rows = Array.from({ length: 10_000 }, (_, n) => `Person ${n},${n},Crew ${n % 40}`);
    const text = `name,number,crew\n${rows.join('\n')}`;
    const started = performance.now();
    expect(await write(text)).toMatchObject({ value: { added: 10_000, crews: 40 } });
    console.log(`${kind}: 10,000 rows took ${(performance.now() - started).toFixed(0)} ms`);
    expect(await verify(records.db, act.by.company)).toMatchObject({ length: 10_041, faults: [] });
    expect(new Set(await statesOf(text))).toEqual(new Set(['unchanged']));
  });
});
