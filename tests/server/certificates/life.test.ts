import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Change } from '#engine/certificate/change.ts';
import { verify } from '#server/audit/audit-trail.ts';
import { checkCredential } from '#server/certificates/check-credential.ts';
import { issued } from '#server/certificates/issued.ts';
import { change } from '#server/certificates/life.ts';
import { showName } from '#server/certificates/name-shown.ts';
import { freshId } from '#server/fresh-id.ts';
import { erase } from '#server/people/erasure.ts';
import { exportPerson } from '#server/people/export.ts';
import type { Act } from '#server/people/member.ts';
import { actOf, added, at, deeds, freshCompany } from '../people/company.ts';
import { allText } from '../people/staff.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { certificateRow, granted } from './granted.ts';

const origin = 'https://underlap.example';
const reason = 'Missed the yearly check.';

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let act: Act;
  let folder: string;
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'underlap-keys-'));
    records = await freshRecords(kind);
    act = await freshCompany(records.db);
  });
  afterAll(async () => {
    await records.drop();
    rmSync(folder, { recursive: true });
  });

  const holder = async (name = 'Ana Apprentice') => {
    const person = await added(records.db, act, { name });
    return { person, id: await granted(records.db, act, { person }) };
  };
  const doing = (id: string, what: Change, why = reason, by = act) =>
    change(records.db, by, id, { id: freshId(), change: what, reason: why });
  const credential = async (id: string) =>
    (await issued(records.db, { origin, keys: folder, at }, id))!;
  const checked = async (text: string) => {
    const found = await checkCredential(records.db, { origin, at }, text);
    return found.ok ? 'OK' : found.error;
  };
  const history = async (id: string) =>
    records.db
      .selectFrom('certificate_event')
      .select(['kind', 'reason', 'by_person_id as by'])
      .where('certificate_id', '=', id)
      .orderBy('id')
      .execute();

  test('suspended, lifted, withdrawn: each at once, with its reason, audited', async () => {
    const { id } = await holder();
    const text = await credential(id);
    expect(await checked(text)).toBe('OK');
    for (const [what, state, code] of [
      ['suspend', 'suspended', 'SUSPENDED'],
      ['lift', 'in-force', 'OK'],
      ['withdraw', 'withdrawn', 'WITHDRAWN'],
    ] as const) {
      expect(await doing(id, what, `Because of ${what}.`)).toEqual({ ok: true, value: true });
      expect((await certificateRow(records.db, id)).state).toBe(state);
      expect(await checked(text)).toBe(code);
    }
    const by = act.by.person;
    expect(await history(id)).toEqual([
      { kind: 'granted', reason: '', by },
      { kind: 'suspended', reason: 'Because of suspend.', by },
      { kind: 'lifted', reason: 'Because of lift.', by },
      { kind: 'withdrawn', reason: 'Because of withdraw.', by },
    ]);
    expect(await deeds(records.db, act.by.company, id)).toEqual([
      'grant certificate',
      'suspend certificate',
      'lift suspension of certificate',
      'withdraw certificate',
    ]);
    expect(await doing(id, 'lift')).toEqual({ ok: false, error: 'NOT_NOW' });
    expect((await verify(records.db, act.by.company)).faults).toEqual([]);
  });

  test('asked for twice it is done once', async () => {
    const { id } = await holder();
    const asked = { id: freshId(), change: 'suspend', reason } as const;
    const twice = () => change(records.db, act, id, asked);
    expect(await Promise.all([twice(), twice()])).toEqual([
      { ok: true, value: true },
      { ok: true, value: true },
    ]);
    expect((await history(id)).map((event) => event.kind)).toEqual(['granted', 'suspended']);
  });

  test('is refused without a reason, of another company, and on one’s own', async () => {
    const { id, person } = await holder();
    expect(await doing(id, 'suspend', ' ')).toEqual({ ok: false, error: 'NO_REASON' });
    const other = await freshCompany(records.db);
    expect(await doing(id, 'suspend', reason, other)).toEqual({ ok: false, error: 'ABSENT' });
    const own = actOf(act.by.company, person, ['office']);
    expect(await doing(id, 'suspend', reason, own)).toEqual({ ok: false, error: 'OWN' });
    expect(await doing(freshId(), 'suspend')).toEqual({ ok: false, error: 'ABSENT' });
    expect((await certificateRow(records.db, id)).state).toBe('in-force');
  });

  test('reissued it has the new name; the file made before says so', async () => {
    const { db } = records;
    const { id, person } = await holder('Ana Ruiz');
    const before = await credential(id);
    await db.updateTable('person').set({ name: 'Ana Lara' }).where('id', '=', person).execute();
    expect(await credential(id)).toBe(before);
    expect((await doing(id, 'reissue', 'Married name.')).ok).toBe(true);
    const after = await credential(id);
    expect(await checked(before)).toBe('REPLACED');
    expect(await checked(after)).toBe('OK');
    const said = Buffer.from(after.split('.')[1]!, 'base64url').toString();
    expect(said).toContain('Ana Lara');
    expect(said).toContain('#issue-2');
    expect((await certificateRow(db, id)).state).toBe('in-force');
  });

  test('the holder alone chooses what is read of their name', async () => {
    const { db } = records;
    const { id, person } = await holder();
    const holding = actOf(act.by.company, person, ['apprentice']);
    expect(await showName(db, act, id, 'full')).toEqual({ ok: false, error: 'ABSENT' });
    expect((await certificateRow(db, id)).name_shown).toBe('initials');
    expect((await showName(db, holding, id, 'full')).ok).toBe(true);
    expect((await certificateRow(db, id)).name_shown).toBe('full');
    expect(await deeds(db, act.by.company, id)).toContain('choose name on certificate');
  });

  test('what happened is never changed', async () => {
    const { id } = await holder();
    const { db } = records;
    const of = sql`certificate_event where certificate_id = ${id}`;
    await expect(sql`delete from ${of}`.execute(db)).rejects.toThrow(/append-only/);
    const changed = sql`update certificate_event set reason = 'x' where certificate_id = ${id}`;
    await expect(changed.execute(db)).rejects.toThrow(/append-only/);
  });

  test('of an erased person it is withdrawn, and says no name', async () => {
    const { db } = records;
    const { id, person } = await holder('Zenobia Quill');
    const withdrawn = await granted(db, act, { person });
    await doing(withdrawn, 'withdraw');
    const text = await credential(id);
    const told = await exportPerson(db, act.by.company, person);
    expect(told).toMatchObject({
      certificates: [{ id }, { id: withdrawn }],
      certificateIssues: [{ name: 'Zenobia Quill' }, { name: 'Zenobia Quill' }],
    });
    await erase(db, { company: act.by.company, actor: act.by.person, at }, person);
    expect(await certificateRow(db, id)).toMatchObject({ state: 'withdrawn', name_shown: 'none' });
    expect((await history(id)).at(-1)).toMatchObject({ kind: 'withdrawn', reason: 'ERASED' });
    expect((await history(withdrawn)).map((event) => event.kind)).toEqual(['granted', 'withdrawn']);
    const all = await allText(records);
    expect(all).not.toContain('Zenobia');
    expect(all).not.toContain(text);
    expect(await issued(db, { origin, keys: folder, at }, id)).toBeUndefined();
    expect(await checked(text)).toBe('WITHDRAWN');
    expect(await doing(id, 'reissue')).toEqual({ ok: false, error: 'NOT_NOW' });
  });
});
