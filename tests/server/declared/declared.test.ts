import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { verify } from '#server/audit/audit-trail.ts';
import * as board from '#server/board/board.ts';
import { schemesNow } from '#server/board/qualifications.ts';
import * as declared from '#server/declared/declared.ts';
import type { GivenDeclared } from '#server/declared/declared-form.ts';
import { freshId } from '#server/fresh-id.ts';
import { erase } from '#server/people/erasure.ts';
import { exportPerson } from '#server/people/export.ts';
import { type Act, doerOf } from '#server/people/member.ts';
import { added, at, deeds, freshCompany } from '../people/company.ts';
import { allText } from '../people/staff.ts';
import { freshRecords, kinds, type Records } from '../records.ts';

const base = 'base-of-wall-installer';
const given: GivenDeclared = {
  title: 'Working at height',
  issuer: 'Harrow County Trades',
  number: 'HT-204',
  scheme: base,
  issuedOn: '2029-03-01',
  validUntil: '2031-03-01',
};

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let act: Act;
  let person: string;
  beforeAll(async () => {
    records = await freshRecords(kind);
  });
  beforeEach(async () => {
    act = await freshCompany(records.db);
    person = await added(records.db, act, { name: 'Ana' });
  });
  afterAll(() => records.drop());

  const declare = (change: Partial<GivenDeclared> = {}, id = freshId(), by = act) =>
    declared.declare(records.db, by, { id, person, schemes: [base] }, { ...given, ...change });
  const theirs = () => declared.of(records.db, act.by.company, person);

  test('is kept once, and stands in the audit trail', async () => {
    const id = freshId();
    for (let again = 0; again < 2; again += 1) {
      expect(await declare({}, id)).toEqual({ ok: true, value: true });
    }
    expect(await theirs()).toEqual([{ id, ...given, madeAt: at }]);
    expect(await deeds(records.db, act.by.company, id)).toEqual(['declare certificate']);
    expect((await verify(records.db, act.by.company)).faults).toEqual([]);
  });

  test('what names it is an identifier', async () => {
    for (const id of ['', 'x', freshId().toUpperCase()]) {
      expect(await declare({}, id)).toEqual({ ok: false, error: 'ABSENT' });
    }
  });

  test('counts for nothing: the board says of the person what it said before', async () => {
    const schemes = await schemesNow();
    const row = () => board.one(records.db, act.by.company, at, schemes, person);
    const before = await row();
    await declare();
    expect(await row()).toEqual(before);
    const { company } = act.by;
    const holding = { qualification: base, state: 'current' };
    expect((await board.page(records.db, company, at, schemes, holding)).rows).toEqual([]);
  });

  test('is told beside the board until it ends', async () => {
    await declare();
    await declare({ scheme: '', validUntil: '' });
    const near = (today: string) => declared.nearestOf(records.db, act.by.company, [person], today);
    expect((await near('2031-03-01'))[person]!.toSorted()).toEqual([base, null].toSorted());
    expect(await near('2031-03-02')).toEqual({ [person]: [null] });
    expect(await declared.nearestOf(records.db, act.by.company, [], at)).toEqual({});
  });

  test.each([
    [{ title: '' }, 'title'],
    [{ issuer: 'x'.repeat(81) }, 'issuer'],
    [{ number: '<1>' }, 'number'],
    [{ scheme: 'roofer' }, 'scheme'],
    [{ issuedOn: '2029-02-30' }, 'issuedOn'],
    [{ issuedOn: '2030-05-02' }, 'issuedOn'],
    [{ validUntil: '2029-02-28' }, 'validUntil'],
    [{ validUntil: 'soon' }, 'validUntil'],
  ] as const)('%j is refused for its %s', async (change, error) => {
    expect(await declare(change)).toEqual({ ok: false, error });
    expect(await theirs()).toEqual([]);
  });

  test('is removed with a reason, once', async () => {
    const id = freshId();
    await declare({}, id);
    const remove = (because: string) => declared.remove(records.db, act, id, because);
    expect(await remove('  ')).toEqual({ ok: false, error: 'reason' });
    expect(await remove('x'.repeat(501))).toEqual({ ok: false, error: 'reason' });
    expect(await theirs()).toHaveLength(1);
    expect(await remove('Shown by mistake')).toEqual({ ok: true, value: true });
    expect(await theirs()).toEqual([]);
    expect(await remove('Shown by mistake')).toEqual({ ok: false, error: 'ABSENT' });
    const names = ['declare certificate', 'remove declared certificate'];
    expect(await deeds(records.db, act.by.company, id)).toEqual(names);
    const kept = await exportPerson(records.db, act.by.company, person);
    expect(kept!.declared).toMatchObject([{ id, removed_because: 'Shown by mistake' }]);
  });

  test('nobody declares, reads or removes anything of another company', async () => {
    const id = freshId();
    await declare({}, id);
    const other = await freshCompany(records.db);
    expect(await declare({}, freshId(), other)).toEqual({ ok: false, error: 'ABSENT' });
    expect(await declare({}, id, other)).toEqual({ ok: false, error: 'ABSENT' });
    const { db } = records;
    expect(await declared.of(db, other.by.company, person)).toEqual([]);
    expect(await declared.nearestOf(db, other.by.company, [person], '2030-05-01')).toEqual({});
    expect(await declared.remove(db, other, id, 'Why not')).toEqual({ ok: false, error: 'ABSENT' });
    expect(await theirs()).toHaveLength(1);
  });

  test('goes with the person who is erased', async () => {
    await declare({ number: 'HT-ERASED' });
    expect(await allText(records)).toContain('HT-ERASED');
    await erase(records.db, doerOf(act), person);
    expect(await allText(records)).not.toContain('HT-ERASED');
  });
});
