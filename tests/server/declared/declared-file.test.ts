import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { Scheme } from '#engine/exam/scheme.ts';
import { verify } from '#server/audit/audit-trail.ts';
import * as board from '#server/board/board.ts';
import { schemesNow } from '#server/board/qualifications.ts';
import * as declared from '#server/declared/declared.ts';
import * as file from '#server/declared/file/declared-file.ts';
import { freshId } from '#server/fresh-id.ts';
import { mostRows } from '#server/import/read-table.ts';
import { openAuth } from '#server/logins/auth.ts';
import { create } from '#server/logins/logins.ts';
import type { Act } from '#server/people/member.ts';
import * as people from '#server/people/people.ts';
import { added, deeds, freshCompany } from '../people/company.ts';
import { freshRecords, kinds, type Records } from '../records.ts';

const base = 'base-of-wall-installer';
const headings =
  'person,person number,user name or email,certificate,issuer,certificate number,nearest qualification,issued on,last day';
const sheet = (...rows: readonly string[]) => [headings, ...rows].join('\n');
const height = 'Working at height,Harrow County Trades,HT-204,,2029-03-01,2031-03-01';

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let schemes: readonly Scheme[];
  let act: Act;
  let ana: string;
  beforeAll(async () => {
    records = await freshRecords(kind);
    schemes = await schemesNow();
  });
  beforeEach(async () => {
    act = await freshCompany(records.db);
    ana = await added(records.db, act, { name: 'Ana López', number: '17' });
  });
  afterAll(() => records.drop());

  const looked = (text: string) => file.preview(records.db, act, schemes, text);
  const planOf = async (text: string) => {
    const plan = await looked(text);
    if (!plan.ok) throw new Error(plan.error.code);
    return plan.value;
  };
  const statesOf = async (text: string) => (await planOf(text)).rows.map(({ state }) => state);
  const faultsOf = async (text: string) =>
    (await planOf(text)).rows.flatMap(({ row, faults }) => faults.map((one) => [row, one]));
  const faultyWhere = async (text: string) =>
    (await planOf(text)).rows.map(({ faults }) => faults[0] && [faults[0].column, faults[0].code]);
  const writeAs = (text: string, digest: string, leaveOut = false) =>
    file.write(records.db, act, schemes, text, { digest, leaveOut });
  const write = async (text: string, leaveOut = false) =>
    writeAs(text, (await planOf(text)).digest, leaveOut);
  const theirs = (person = ana) => declared.of(records.db, act.by.company, person);

  test('a preview writes nothing; writing keeps each as one by hand is, in the audit trail', async () => {
    const { db } = records;
    const text = sheet(
      `ana lopez,17,,${height}`,
      'Ana López,,,First aid,Red Barn School,,Base of wall installer,2029-05-01,',
    );
    expect(await statesOf(text)).toEqual(['new', 'new']);
    expect(await theirs()).toEqual([]);
    expect(await write(text)).toEqual({ ok: true, value: { added: 2, before: 0 } });
    expect(await theirs()).toMatchObject([
      { title: 'First aid', number: null, scheme: base, validUntil: null, madeAt: act.at },
      {
        title: 'Working at height',
        issuer: 'Harrow County Trades',
        number: 'HT-204',
        scheme: null,
        issuedOn: '2029-03-01',
        validUntil: '2031-03-01',
      },
    ]);
    for (const { id } of await theirs()) {
      expect(await deeds(db, act.by.company, id)).toEqual(['declare certificate']);
    }
    expect((await verify(db, act.by.company)).faults).toEqual([]);
    expect(await declared.count(db, act.by.company)).toBe(2);
  });

  test('what was read in stands beside the board as declared, and changes no state on it', async () => {
    const { db } = records;
    const { company } = act.by;
    const row = () => board.one(db, company, act.at, schemes, ana);
    const before = await row();
    await write(sheet('Ana López,,,Base of wall,School,,Base of wall installer,2029-03-01,'));
    expect(await row()).toEqual(before);
    expect(before!.cells.every(({ state }) => state === 'none')).toBe(true);
    const today = act.at.slice(0, 10);
    expect(await declared.nearestOf(db, company, [ana], today)).toEqual({ [ana]: [base] });
  });

  test('sent twice, or read in again, it is written once', async () => {
    const text = sheet(`Ana López,,,${height}`);
    const { digest } = await planOf(text);
    expect(await writeAs(text, digest)).toEqual({ ok: true, value: { added: 1, before: 0 } });
    const before = await deeds(records.db, act.by.company);
    expect(await writeAs(text, digest)).toEqual({ ok: true, value: { added: 0, before: 1 } });
    expect(await statesOf(sheet(`,17,,${height.toUpperCase()}`))).toEqual(['unchanged']);
    expect(await deeds(records.db, act.by.company)).toEqual(before);
    expect(await theirs()).toHaveLength(1);
  });

  test('two at once write it once', async () => {
    const text = sheet(`Ana López,,,${height}`);
    const { digest } = await planOf(text);
    const done = await Promise.all([writeAs(text, digest), writeAs(text, digest)]);
    expect(done.map((one) => one.ok && one.value.added).toSorted()).toEqual([0, 1]);
    expect(await theirs()).toHaveLength(1);
  });

  test('every fault is told by its row and column at once', async () => {
    const text = sheet(
      `Ana López,17,,${height}`,
      'Nobody,,,,<script>,=1+1,roofer,3/1/2029,soon',
      ',,,Height,School,,,2031-01-01,',
      'Ana López,,,Height,School,,,2029-03-01,2029-02-28',
      'Ana LÃ³pez,,,Height,School,,,2029-02-30,,more',
    );
    expect(await faultsOf(text)).toEqual([
      [3, { column: 'person', code: 'UNKNOWN', text: 'Nobody' }],
      [3, { column: 'title', code: 'MISSING' }],
      [3, { column: 'issuer', code: 'WRONG', text: '<script>' }],
      [3, { column: 'number', code: 'WRONG', text: '=1+1' }],
      [3, { column: 'issuedOn', code: 'NOT_A_DAY', text: '3/1/2029' }],
      [3, { column: 'validUntil', code: 'NOT_A_DAY', text: 'soon' }],
      [3, { column: 'scheme', code: 'UNKNOWN_SCHEME', text: 'roofer' }],
      [4, { column: 'person', code: 'MISSING' }],
      [4, { column: 'issuedOn', code: 'AHEAD', text: '2031-01-01' }],
      [5, { column: 'validUntil', code: 'BEFORE_ISSUE', text: '2029-02-28' }],
      [6, { column: 'person', code: 'MISREAD', text: 'Ana LÃ³pez', meant: 'Ana López' }],
      [6, { column: 'issuedOn', code: 'NOT_A_DAY', text: '2029-02-30' }],
      [6, { column: null, code: 'TOO_MANY_CELLS', text: 'more' }],
    ]);
    expect(await write(text)).toMatchObject({ ok: false, error: { code: 'FAULTY' } });
    expect(await theirs()).toEqual([]);
    expect(await write(text, true)).toEqual({ ok: true, value: { added: 1, before: 0 } });
  });

  test('somebody is known by name, number, user name or email, and all that is given must agree', async () => {
    const { db } = records;
    const auth = await openAuth(records);
    const username = `bo.${kind}`;
    const login = await create(auth, { name: 'Bo', password: 'three plain words', username });
    if (!login.ok) throw new Error(login.error);
    const bo = await added(db, act, { name: 'Bo', email: 'bo@site.example' });
    await db.updateTable('person').set({ login_id: login.value }).where('id', '=', bo).execute();
    await added(db, act, { name: 'Bo', number: '18' });
    const gone = await added(db, act, { name: 'Gone', number: '19' });
    await people.leave(db, act, gone);
    const other = await freshCompany(db);
    await added(db, other, { name: 'Theirs', number: '20' });
    const about = (who: string) => `${who},${height}`;
    const text = sheet(
      about(`,,${username.toUpperCase()}`),
      about('Bo,,BO@site.example').replace('HT-204', 'HT-205'),
      about('Bo,,'),
      about('Bo,17,'),
      about('Bo,,nobody'),
      about('Gone,19,'),
      about('Theirs,20,'),
    );
    expect(await faultyWhere(text)).toEqual([
      undefined,
      undefined,
      ['person', 'AMBIGUOUS'],
      ['personNumber', 'CONTRADICTED'],
      ['account', 'UNKNOWN'],
      ['person', 'UNKNOWN'],
      ['person', 'UNKNOWN'],
    ]);
    expect(await write(text, true)).toMatchObject({ value: { added: 2 } });
    expect(await theirs(bo)).toHaveLength(2);
  });

  test('what stands in the file twice is a fault, and what is kept with another day or qualification', async () => {
    await write(sheet(`Ana López,,,${height}`));
    const later = height.replace('2031-03-01', '2032-03-01');
    const fresh = height.replace('HT-204', 'HT-205');
    const text = sheet(
      `Ana López,,,${height}`,
      `,17,,${height}`,
      `Ana López,,,${later}`,
      `Ana López,,,${fresh}`,
      `Ana López,,,${fresh.replace('2031-03-01', '')}`,
    );
    expect(await faultsOf(text)).toEqual([
      [3, { column: 'title', code: 'TWICE', row: 2 }],
      [4, { column: 'title', code: 'TWICE', row: 3 }],
      [6, { column: 'title', code: 'TWICE', row: 5 }],
    ]);
    expect(await faultsOf(sheet(`Ana López,,,${later}`))).toEqual([
      [2, { column: 'title', code: 'KEPT_OTHERWISE' }],
    ]);
    const [kept] = await theirs();
    await declared.remove(records.db, act, kept!.id, 'Renewed');
    expect(await statesOf(sheet(`Ana López,,,${later}`))).toEqual(['new']);
  });

  test('what changed meanwhile is shown anew before anything is written', async () => {
    const text = sheet(`Ana López,,,${height}`, `Eva,,,${height}`);
    const { digest } = await planOf(text);
    await added(records.db, act, { name: 'Eva' });
    expect(await writeAs(text, digest, true)).toMatchObject({
      ok: false,
      error: { code: 'CHANGED', plan: { rows: [{ state: 'new' }, { state: 'new' }] } },
    });
    expect(await theirs()).toEqual([]);
  });

  test.each(['en', 'es'] as const)(
    'what is exported in %s reads in as there already, and whole into empty records',
    async (language) => {
      const { db } = records;
      await added(db, act, { name: '+Eva, the second', email: 'eva@site.example' });
      const declare = (change: Readonly<Record<string, string>>, person = ana) => {
        const [title, issuer, number] = ['+Height', "'-Trades", '-204'];
        const given = { title, issuer, number, scheme: base, issuedOn: '2029-03-01' };
        const asked = { id: freshId(), person, schemes: [base] };
        return declared.declare(db, act, asked, { ...given, validUntil: '', ...change });
      };
      await declare({});
      await declare({ scheme: '', number: '' });
      // The same one by hand, twice; and one that says otherwise of the same paper.
      await declare({});
      await declare({ validUntil: '2030-03-01' });
      await write(sheet(`"+Eva, the second",,eva@site.example,${height}`));
      const text = await file.exported(db, act.by.company, schemes, language);
      expect(text.charCodeAt(0)).toBe(0xfeff);
      expect(text).not.toMatch(/(^|,)"?[=+\-@\t]/m);
      expect(await statesOf(text)).toEqual(Array.from({ length: 4 }, () => 'unchanged'));
      const kept = async () =>
        (await theirs()).map(({ id: _, madeAt: __, ...one }) => JSON.stringify(one));
      const before = new Set(await kept());
      await db
        .deleteFrom('declared_certificate')
        .where('company_id', '=', act.by.company)
        .execute();
      // Of two that contradict each other the second is a fault: what is declared is one paper.
      expect(await statesOf(text)).toEqual(expect.arrayContaining(['new', 'new', 'new', 'faulty']));
      expect(await write(text, true)).toMatchObject({ value: { added: 3 } });
      expect([...before]).toEqual(expect.arrayContaining(await kept()));
      expect(await kept()).toHaveLength(2);
    },
  );

  test('the template reads as a file without rows, in both languages', async () => {
    for (const language of ['en', 'es'] as const) {
      const text = file.template(language);
      expect(await looked(text)).toEqual({ ok: false, error: { code: 'EMPTY' } });
      expect(await statesOf(`${text}Ana López,,,${height}`)).toEqual(['new']);
    }
  });

  test('a file without what is needed is told', async () => {
    expect(await looked('number,certificate,issuer,issued on\n17,a,b,2029-01-01')).toMatchObject({
      error: { code: 'COLUMN_MISSING', column: 'person' },
    });
    expect(await looked('person,certificate,issuer\nAna López,a,b')).toMatchObject({
      error: { code: 'COLUMN_MISSING', column: 'issuedOn' },
    });
    const rows = Array.from({ length: mostRows + 1 }, () => `Ana López,17,,${height}`);
    expect(await looked(sheet(...rows))).toEqual({
      ok: false,
      error: { code: 'TOO_MANY_ROWS', most: mostRows },
    });
  });

  test('another company is neither read nor written', async () => {
    await write(sheet(`Ana López,,,${height}`));
    act = await freshCompany(records.db);
    expect(await faultyWhere(sheet(`Ana López,,,${height}`))).toEqual([['person', 'UNKNOWN']]);
    expect(await file.exported(records.db, act.by.company, schemes, 'en')).not.toContain('Ana');
    expect(await declared.count(records.db, act.by.company)).toBe(0);
  });

  test('as many rows as there may be are written in one go', async () => {
    const rows = Array.from({ length: mostRows }, (_, n) => `,17,,Card ${n},School,,,2029-03-01,`);
    expect(await write(sheet(...rows))).toEqual({
      ok: true,
      value: { added: mostRows, before: 0 },
    });
    expect(await declared.count(records.db, act.by.company)).toBe(mostRows);
  });
});
