import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { verify } from '#server/audit/audit-trail.ts';
import { isPublicId } from '#server/certificates/public-id.ts';
import { Inbox } from '#server/attempts/inbox.ts';
import { receive } from '#server/attempts/receive.ts';
import { remark } from '#server/attempts/remark.ts';
import { demoCompany, demoProgress, makeDemo } from '#server/demo/make-demo.ts';
import { removeDemo } from '#server/demo/remove-demo.ts';
import { openAuth } from '#server/logins/auth.ts';
import { signIn } from '#server/logins/logins.ts';
import { at, freshCompany, freshMember } from '../attempts/company.ts';
import { content, keptWall } from '../attempts/kept.ts';
import { freshRecords, kinds, type Records } from '../records.ts';

const now = new Date('2030-05-01T12:00:00.000Z');
const tables = [
  'company',
  'crew',
  'person',
  'assignment',
  'attempt',
  'mark',
  'standing',
  'progress',
  'audit_entry',
  'assignment_work',
  'assignment_for',
  'decision',
  'application',
  'part_result',
  'item_response',
  'involvement',
  'ruling',
  'certificate',
  'login',
  'session',
  'sign_in_way',
] as const;

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let real: string;
  let made: Extract<Awaited<ReturnType<typeof makeDemo>>, { ok: true }>['value'];

  const counts = async () => {
    const rows: Record<string, number> = {};
    for (const table of tables) {
      const { count } = await records.db
        .selectFrom(table)
        .select((eb) => eb.fn.countAll().as('count'))
        .executeTakeFirstOrThrow();
      rows[table] = Number(count);
    }
    return rows;
  };
  let before: Record<string, number>;

  beforeAll(async () => {
    records = await freshRecords(kind);
    const auth = await openAuth(records);
    ({ company: real } = await freshCompany(records.db));
    const by = await freshMember(records.db, real);
    const reception = { db: records.db, inbox: new Inbox(records), content };
    await receive(reception, { by, at }, [{ kind: 'mockup', kept: keptWall() }]);
    before = await counts();
    const outcome = await makeDemo(records, auth, content, { now, size: 16 });
    if (!outcome.ok) throw new Error(outcome.error);
    made = outcome.value;
  });
  afterAll(() => records.drop());

  test('it is filled, and what its attempts add up to is right', async () => {
    expect(made).toMatchObject({ people: 16 });
    expect(made.attempts).toBeGreaterThan(20);
    const standing = () =>
      records.db.selectFrom('standing').selectAll().orderBy('person_id').orderBy('about').execute();
    const progress = () =>
      records.db
        .selectFrom('progress')
        .selectAll()
        .orderBy('work_id')
        .orderBy('person_id')
        .execute();
    const sums = [await standing(), await progress()];
    const report = await remark(records, content, { at: now.toISOString() });
    expect(report).toMatchObject({ marked: 0, changes: [], unreadable: [] });
    expect([await standing(), await progress()]).toEqual(sums);
    expect((await verify(records.db, made.company)).faults).toEqual([]);
  });

  test('its examinations went by the rules of their schemes', async () => {
    const parts = await records.db
      .selectFrom('part_result')
      .selectAll()
      .where('company_id', '=', made.company)
      .execute();
    expect(parts.length).toBeGreaterThan(64);
    for (const { scheme, part, share, result } of parts) {
      const found = [...content.schemes.values()].find(({ id }) => id === scheme)!;
      const { value: mark } = found.parts.find(({ id }) => id === part)!.passMark;
      expect(result).toBe(share! >= Number(mark.n) / Number(mark.d) ? 'passed' : 'failed');
    }
    const answers = await records.db
      .selectFrom('item_response')
      .selectAll()
      .where('company_id', '=', made.company)
      .execute();
    for (const [sitting, own] of Map.groupBy(answers, ({ sitting_id }) => sitting_id)) {
      const { share } = parts.find(({ id }) => id === sitting)!;
      expect(own.filter(({ is_right }) => is_right === 1).length / own.length).toBeCloseTo(share!);
      expect(own.every((one) => one.is_right <= one.was_answered)).toBe(true);
    }
    const tries = Map.groupBy(parts, (one) => `${one.application_id}/${one.part}`);
    expect(Math.max(...[...tries.values()].map(({ length }) => length))).toBeLessThanOrEqual(3);
    const certificates = await records.db.selectFrom('certificate').selectAll().execute();
    const today = now.toISOString().slice(0, 10);
    expect(certificates.some(({ valid_until }) => valid_until < today)).toBe(true);
    expect(certificates.some(({ valid_until }) => valid_until >= today)).toBe(true);
  });

  test('every certificate of it has an address, a paper and a history', async () => {
    const { db } = records;
    const ids = await db
      .selectFrom('certificate')
      .select(['id', 'public_id'])
      .where('company_id', '=', made.company)
      .execute();
    expect(ids.every((one) => isPublicId(one.public_id))).toBe(true);
    const issues = await db.selectFrom('certificate_issue').select('certificate_id').execute();
    expect(new Set(issues.map((one) => one.certificate_id))).toEqual(
      new Set(ids.map(({ id }) => id)),
    );
    const states = db.selectFrom('certificate').select('state').where('state', '<>', 'in-force');
    const events = db.selectFrom('certificate_event').select('kind');
    const kinds = (await events.execute()).map((event) => event.kind);
    expect(kinds.filter((kind) => kind === 'granted')).toHaveLength(ids.length);
    const stopped = kinds.filter((kind) => kind === 'suspended' || kind === 'withdrawn');
    expect(stopped).toHaveLength((await states.execute()).length);
  });

  test('one signs in to it with the password that was told', async () => {
    const auth = await openAuth(records);
    const from = { address: '192.0.2.1', agent: 'test' };
    for (const { username } of made.logins) {
      const named = { name: username, password: made.password };
      expect(await signIn({ auth, db: records.db }, named, from, new Date())).toMatchObject({
        ok: true,
      });
    }
  });

  test('there is one only', async () => {
    const auth = await openAuth(records);
    const again = await makeDemo(records, auth, content, { now, size: 16 });
    expect(again).toEqual({ ok: false, error: 'THERE' });
  });

  test('a real company cannot be made an invented one', async () => {
    const turned = sql`update company set is_demo = 1 where id = ${real}`.execute(records.db);
    await expect(turned).rejects.toThrow(/for good/);
    const deleted = sql`delete from mark`.execute(records.db);
    await expect(deleted).rejects.toThrow(/append-only/);
  });

  test('nothing of it is changed', async () => {
    for (const table of ['attempt', 'mark', 'decision', 'audit_entry'] as const) {
      const changed = sql`update ${sql.table(table)} set content_revision = 'x'`;
      const said = sql`update ${sql.table(table)} set company_id = 'x'`;
      const isMarked = table === 'attempt' || table === 'mark';
      await expect((isMarked ? changed : said).execute(records.db)).rejects.toThrow(/append-only/);
    }
  });

  test('what was done lies in the year before, while the person was there', async () => {
    const rows = await records.db
      .selectFrom('attempt')
      .innerJoin('person', 'person.id', 'attempt.person_id')
      .select(['received_at', 'created_at', 'left_at'])
      .where('attempt.company_id', '=', made.company)
      .execute();
    expect(rows.some(({ left_at }) => left_at !== null)).toBe(true);
    for (const { received_at, created_at, left_at } of rows) {
      expect(received_at > created_at).toBe(true);
      expect(received_at < (left_at ?? now.toISOString().slice(0, 10))).toBe(true);
    }
    const said = await records.db
      .selectFrom('decision')
      .selectAll()
      .where('company_id', '=', made.company)
      .execute();
    expect(said.length).toBeGreaterThan(1);
  });

  test('it is taken away wholly, and nothing else is', async () => {
    await removeDemo(records.db, made.company);
    expect(await demoCompany(records.db)).toBeUndefined();
    expect(await counts()).toEqual(before);
    const logins = await records.db.selectFrom('login').selectAll().execute();
    expect(logins).toEqual([]);
    const tries = records.db.selectFrom('throttle').select('key').where('key', 'like', '%demo%');
    expect(await tries.execute()).toEqual([]);
  });

  test('made on the same day it is the same, and broken off it is made anew', async () => {
    const { db } = records;
    const auth = await openAuth(records);
    const ids = () =>
      db
        .selectFrom('attempt')
        .innerJoin('mark', 'mark.attempt_id', 'attempt.id')
        .select(['attempt.id', 'score', 'played', 'received_at'])
        .where('company_id', '!=', real)
        .orderBy('attempt.id')
        .execute();
    const later = new Date(now.getTime() + 60_000);
    expect(await makeDemo(records, auth, content, { now: later, size: 16 })).toMatchObject({
      ok: true,
      value: { people: 16, attempts: made.attempts },
    });
    const first = await ids();
    expect(first).toHaveLength(made.attempts);
    await removeDemo(db, (await demoCompany(db))!);

    const stop = () => {
      throw new Error('broken off');
    };
    const broken = makeDemo(records, auth, content, { now, size: 16, tell: stop });
    await expect(broken).rejects.toThrow('broken off');
    expect(await demoCompany(db)).toBeDefined();
    expect(demoProgress()).toBeUndefined();
    expect(await makeDemo(records, auth, content, { now, size: 16 })).toMatchObject({ ok: true });
    expect(await ids()).toEqual(first);
    const companies = db.selectFrom('company').select('id').where('is_demo', '=', 1);
    expect(await companies.execute()).toHaveLength(1);
    await removeDemo(db, (await demoCompany(db))!);
    expect(await counts()).toEqual(before);
  }, 180_000);

  test('a real company is not taken away', async () => {
    await expect(removeDemo(records.db, real)).rejects.toThrow(/append-only/);
    expect(await counts()).toEqual(before);
  });
});
