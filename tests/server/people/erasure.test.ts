import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { verify } from '#server/audit/audit-trail.ts';
import { freshId } from '#server/fresh-id.ts';
import { signIn } from '#server/logins/logins.ts';
import { erase } from '#server/people/erasure.ts';
import { exportPerson } from '#server/people/export.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { addAttempt, addPerson, allText, at, password, staff } from './staff.ts';

const later = '2030-05-02T07:30:00.000Z';
const from = { address: '192.0.2.7', agent: 'a phone' };

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  beforeAll(async () => {
    records = await freshRecords(kind);
  });
  afterAll(() => records.drop());

  test('nothing in any table says who an erased person was', async () => {
    const { db } = records;
    const known = await staff(records);
    const attempt = await addAttempt(records, known);
    await signIn(
      { auth: known.auth, db },
      { name: known.login.email, password: 'a wrong password' },
      from,
      new Date(at),
    );
    const told = [
      'Ana Apprentice',
      'ana apprentice',
      'B-17',
      'B-17@office.example',
      known.login.email,
      known.login.id,
    ];
    const before = await allText(records);
    for (const word of told) expect(before).toContain(word);

    const doer = { company: known.company, actor: known.office, at: later };
    expect(await erase(db, doer, known.apprentice)).toEqual({ ok: true, value: 'ERASED' });

    const after = await allText(records);
    for (const word of [...told, `digest-${known.apprentice}`]) expect(after).not.toContain(word);
    const row = await db
      .selectFrom('person')
      .selectAll()
      .where('id', '=', known.apprentice)
      .executeTakeFirstOrThrow();
    expect(row).toMatchObject({ name: '', search: '', login_id: null, erased_at: later });
    const kept = await db.selectFrom('attempt').select('id').execute();
    expect(kept.map(({ id }) => id)).toContain(attempt);
    expect((await verify(db, known.company)).faults).toEqual([]);
    const again = await signIn(
      { auth: known.auth, db },
      { name: known.login.email, password },
      from,
      new Date(later),
    );
    expect(again).toMatchObject({ ok: false, error: { code: 'NOT_RIGHT' } });
  });

  test('who was erased is not erased again: the trail has one entry of it', async () => {
    const known = await staff(records);
    const doer = { company: known.company, actor: known.office, at: later };
    const both = await Promise.all([
      erase(records.db, doer, known.apprentice),
      erase(records.db, doer, known.apprentice),
    ]);
    expect(both.filter(({ ok }) => ok)).not.toEqual([]);
    expect(await erase(records.db, doer, known.apprentice)).toEqual({
      ok: true,
      value: 'ERASED_BEFORE',
    });
    const entries = await records.db
      .selectFrom('audit_entry')
      .select('actor')
      .where('action', '=', 'erase person')
      .where('subject', '=', known.apprentice)
      .execute();
    expect(entries).toEqual([{ actor: known.office }]);
  });

  test('the last who keeps the office stays, and of two only one can go', async () => {
    const { db } = records;
    const known = await staff(records);
    const doer = { company: known.company, actor: null, at: later };
    const refused = { ok: false, error: 'LAST_OFFICE' };
    expect(await erase(db, doer, known.office)).toEqual(refused);
    expect((await verify(db, known.company)).length).toBe(1);

    const second = freshId();
    const who = { id: second, name: 'Second Office', login: freshId(), roles: 'trainer office' };
    await addPerson(records, known.company, who);
    const both = await Promise.all([erase(db, doer, known.office), erase(db, doer, second)]);
    expect(both.filter(({ ok }) => ok)).toHaveLength(1);
    expect(both).toContainEqual(refused);
  });

  test('a login that another company knows stays, with its sessions', async () => {
    const { db } = records;
    const known = await staff(records);
    const other = await staff(records);
    await addPerson(records, other.company, {
      id: freshId(),
      name: 'Ana Apprentice',
      login: known.login.id,
      roles: 'apprentice',
    });
    await erase(db, { company: known.company, actor: null, at: later }, known.apprentice);
    const sessions = await db
      .selectFrom('session')
      .select('id')
      .where('userId', '=', known.login.id)
      .execute();
    expect(sessions).toHaveLength(1);
  });

  test('nobody of another company is erased or shown', async () => {
    const known = await staff(records);
    const other = await staff(records);
    const doer = { company: other.company, actor: other.office, at: later };
    expect(await erase(records.db, doer, known.apprentice)).toEqual({
      ok: false,
      error: 'UNKNOWN_PERSON',
    });
    expect(await exportPerson(records.db, other.company, known.apprentice)).toBeUndefined();
  });

  test('an export holds all that is kept about a person, and no secret', async () => {
    const known = await staff(records);
    const attempt = await addAttempt(records, known);
    const kept = await exportPerson(records.db, known.company, known.apprentice);
    expect(kept).toMatchObject({
      person: { name: 'Ana Apprentice', number: 'B-17' },
      crew: { id: known.crew, name: 'Crew 1' },
      login: { email: known.login.email, sessions: [{ userAgent: 'a phone' }] },
      cards: [{ made_by: known.office }],
      attempts: [{ id: attempt, played: { steps: [] } }],
      marks: [{ attempt_id: attempt, score: 90 }],
      decisions: { about: [{ reason: 'Well done.' }], by: [] },
    });
    const text = JSON.stringify(kept);
    const { token } = await records.db
      .selectFrom('session')
      .select('token')
      .where('userId', '=', known.login.id)
      .executeTakeFirstOrThrow();
    for (const secret of [`digest-${known.apprentice}`, token, '"password"']) {
      expect(text).not.toContain(secret);
    }
    const office = await exportPerson(records.db, known.company, known.office);
    expect(office).toMatchObject({
      decisions: { about: [], by: [{ attempt_id: attempt }] },
      audit: { by: [{ action: 'found company' }] },
    });
  });
});
