import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { verify } from '#server/audit/audit-trail.ts';
import { freshId } from '#server/fresh-id.ts';
import * as crews from '#server/people/crews.ts';
import type { Act } from '#server/people/member.ts';
import * as people from '#server/people/people.ts';
import * as roll from '#server/people/roll.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { added, deeds, freshCompany } from './company.ts';

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

  const signsIn = (person: string) =>
    records.db
      .updateTable('person')
      .set({ login_id: freshId() })
      .where('id', '=', person)
      .execute();

  test('a person is added, changed, moved, leaves and comes back, each in the audit trail', async () => {
    const { db } = records;
    const { company } = act.by;
    const made = await crews.create(db, act, { name: 'North' });
    const crew = made.ok ? made.value : '';
    const person = await added(db, act, { name: 'Ana Lopez', number: '17' });
    const details = { name: 'Ana López', number: '18', language: 'es', email: 'ana@site.example' };
    expect(await people.change(db, act, person, details)).toMatchObject({ ok: true });
    expect(await people.changeRoles(db, act, person, ['trainer', 'apprentice'])).toMatchObject({
      ok: true,
    });
    expect(await people.move(db, act, person, crew)).toMatchObject({ ok: true });
    expect(await people.leave(db, act, person)).toMatchObject({ ok: true });
    expect((await roll.one(db, company, person))?.leftAt).toBe(act.at);
    expect(await people.comeBack(db, act, person)).toMatchObject({ ok: true });
    expect(await roll.one(db, company, person)).toEqual({
      ...details,
      id: person,
      crew,
      crewName: 'North',
      roles: ['apprentice', 'trainer'],
      leftAt: null,
      canSignIn: false,
    });
    expect(await deeds(db, company, person)).toEqual([
      'add person',
      'change person',
      'change roles',
      'move person',
      'leave company',
      'come back',
    ]);
    expect(await verify(db, company)).toMatchObject({ faults: [] });
    const kept = await db.selectFrom('audit_entry').select('detail').execute();
    expect(kept.map(({ detail }) => detail).join(' ')).not.toMatch(/Ana|site\.example/);
  });

  test('what changes nothing leaves nothing in the trail', async () => {
    const { db } = records;
    const person = await added(db, act, { name: 'Ana', number: '17' });
    await people.change(db, act, person, { name: ' Ana ', number: '17', language: '', email: '' });
    await people.changeRoles(db, act, person, ['apprentice']);
    await people.move(db, act, person, null);
    expect(await deeds(db, act.by.company, person)).toEqual(['add person']);
  });

  test.each([
    ['name', { name: '<b>' }],
    ['number', { number: '1;2' }],
    ['roles', { roles: [] }],
    ['language', { language: 'fr' }],
    ['email', { email: 'ana' }],
  ] as const)('a wrong %s is told by its field', async (field, wrong) => {
    const given = {
      name: 'Ana',
      number: '',
      roles: ['apprentice' as const],
      crew: '',
      language: '',
      email: '',
    };
    const outcome = await people.create(records.db, act, {
      ...given,
      ...wrong,
      roles: 'roles' in wrong ? [] : given.roles,
    });
    expect(outcome).toEqual({ ok: false, error: { field, code: 'WRONG' } });
  });

  test('a number belongs to one person of a company, also after they have left', async () => {
    const { db } = records;
    const first = await added(db, act, { name: 'Ana', number: '17' });
    const second = await added(db, act, { name: 'Eva' });
    await people.leave(db, act, first);
    const taken = { ok: false, error: { field: 'number', code: 'TAKEN' } };
    const given = { name: 'Eva', number: '17', language: '', email: '' };
    expect(await people.change(db, act, second, given)).toEqual(taken);
    expect(await people.create(db, act, { ...given, roles: ['apprentice'], crew: '' })).toEqual(
      taken,
    );
    const elsewhere = await freshCompany(db);
    await added(db, elsewhere, { name: 'Eva', number: '17' });
  });

  test('the last of the office who can sign in neither leaves nor loses the role', async () => {
    const { db } = records;
    const { person } = act.by;
    const kept = { ok: false, error: { field: 'roles', code: 'LAST_OFFICE' } };
    const other = await added(db, act, { name: 'Second', roles: ['office'] });
    expect(await people.leave(db, act, person)).toEqual(kept);
    expect(await people.changeRoles(db, act, person, ['trainer'])).toEqual(kept);
    await signsIn(other);
    expect(await people.leave(db, act, person)).toMatchObject({ ok: true });
    expect(await people.changeRoles(db, act, other, ['trainer'])).toEqual(kept);
  });

  test('two of the office who leave at once do not both get away', async () => {
    const { db } = records;
    const other = await added(db, act, { name: 'Second', roles: ['office'] });
    await signsIn(other);
    const left = await Promise.all([
      people.leave(db, act, act.by.person),
      people.leave(db, act, other),
    ]);
    expect(left.filter(({ ok }) => ok)).toHaveLength(1);
  });

  test('somebody of another company is not there', async () => {
    const { db } = records;
    const person = await added(db, act, { name: 'Ours', number: '1' });
    const stranger = await freshCompany(db);
    const details = { name: 'Theirs', number: '', language: '', email: '' };
    for (const outcome of [
      await people.change(db, stranger, person, details),
      await people.changeRoles(db, stranger, person, ['office']),
      await people.move(db, stranger, person, null),
      await people.leave(db, stranger, person),
    ]) {
      expect(outcome).toMatchObject({ ok: false, error: { code: 'ABSENT' } });
    }
    await people.leave(db, act, person);
    expect(await people.comeBack(db, stranger, person)).toMatchObject({ ok: false });
    expect(await roll.one(db, stranger.by.company, person)).toBeUndefined();
  });
});
