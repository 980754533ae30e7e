import { sql } from 'kysely';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { checkedSequence } from '#engine/compile/check-bundle.ts';
import { begin } from '#server/checks/begin.ts';
import { check, save, underWay } from '#server/checks/checks.ts';
import { enterTrainer, involvedWith } from '#server/checks/involvement.ts';
import { verify } from '#server/audit/audit-trail.ts';
import { compose } from '#server/assignments/assignments.ts';
import { decide as say } from '#server/attempts/decisions.ts';
import { freshId } from '#server/fresh-id.ts';
import { draft } from '../assignments/given.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import {
  applied,
  begun,
  bundleOf,
  content,
  days,
  filled,
  installer,
  onDay,
  password,
  pointsOf,
  realWall,
  signed,
  type Signer,
  site,
  type Site,
} from './examined.ts';

const firstOf = async (on: Site, id: string) => pointsOf(await bundleOf(on, id))[0]!.id;

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let on: Site;
  let ed: Signer;
  let application: string;
  beforeAll(async () => {
    records = await freshRecords(kind);
  });
  afterAll(() => records.drop());
  beforeEach(async () => {
    on = await site(records);
    ed = await on.signer();
    application = await applied(on);
  });

  const result = (id: string) =>
    on.db.selectFrom('part_result').selectAll().where('id', '=', id).executeTakeFirst();
  const critical = async (id: string) =>
    pointsOf(await bundleOf(on, id)).find(({ severity }) => severity === 'critical')!.id;
  const minor = async (id: string) =>
    pointsOf(await bundleOf(on, id)).find(({ severity }) => severity === 'minor')!.id;

  test('a check that was begun, filled in and signed is a result that counts, with its examiner', async () => {
    const id = await begun(on, ed, application);
    expect((await underWay(on.db, ed.act)).map((one) => one.id)).toEqual([id]);
    const sheet = await filled(on, id);
    expect(await save(on.db, ed.act, { id, sheet })).toEqual({ ok: true, value: sheet });
    expect(await signed(on, ed, { id, sheet: {} })).toEqual({
      ok: true,
      value: { signed: 'now', outcome: 'passed', taking: 'passed' },
    });
    expect(await result(id)).toMatchObject({
      application_id: application,
      person_id: on.candidate.by.person,
      scheme: installer,
      part: realWall,
      on_date: '2030-05-01',
      result: 'passed',
      share: 1,
      examiners: JSON.stringify([ed.act.by.person]),
      agreement: null,
      released_at: days(0),
    });
    expect(await involvedWith(on.db, on.company, on.candidate.by.person)).toEqual([
      { person: ed.act.by.person, as: 'examiner', on: '2030-05-01' },
    ]);
    expect(await underWay(on.db, ed.act)).toEqual([]);
    const trail = await verify(on.db, on.company);
    expect(trail.faults).toEqual([]);
  });

  test('a critical measure out of tolerance fails the check, whatever the sum', async () => {
    const id = await begun(on, ed, application);
    const wrong = [await critical(id)];
    const sheet = await filled(on, id, { wrong });
    expect(await signed(on, ed, { id, sheet })).toMatchObject({ value: { outcome: 'failed' } });
    expect(await result(id)).toMatchObject({ result: 'failed' });
    const again = await begin(on.db, ed.act, content, {
      id: freshId(),
      application,
      part: realWall,
    });
    expect(again).toEqual({
      ok: false,
      error: {
        code: 'NOT_NOW',
        state: { kind: 'must-wait', from: '2030-05-15', because: 'just-failed' },
      },
    });
  });

  test('with a critical point unseen it cannot be signed, but broken off with a reason it counts as no try', async () => {
    const id = await begun(on, ed, application);
    const unseen = [await critical(id)];
    const sheet = await filled(on, id, { unseen });
    expect(await signed(on, ed, { id, sheet })).toEqual({
      ok: false,
      error: [{ code: 'OPEN', points: unseen }],
    });
    expect(await signed(on, ed, { id, sheet, brokenOff: ' ' })).toEqual({
      ok: false,
      error: [{ code: 'NO_REASON' }],
    });
    expect(await signed(on, ed, { id, sheet, brokenOff: 'It began to rain.' })).toMatchObject({
      value: { outcome: 'open', taking: 'open' },
    });
    expect(await result(id)).toMatchObject({ result: 'void' });
    await begun(on, ed, application);
  });

  test('signed, it never changes again: not by saving, by signing or by hand', async () => {
    const id = await begun(on, ed, application);
    const sheet = await filled(on, id);
    await signed(on, ed, { id, sheet });
    const before = await check(on.db, on.company, id);
    const point = await firstOf(on, id);
    const other = { [point]: { at: days(1), says: 'wrong' } };
    expect(await save(on.db, onDay(ed.act, 2), { id, sheet: other })).toEqual({
      ok: false,
      error: [{ code: 'SIGNED' }],
    });
    expect(await signed(on, ed, { id, sheet: other })).toMatchObject({
      ok: true,
      value: { signed: 'before', outcome: 'passed' },
    });
    await expect(
      sql`update hands_on_check set filled = '{}' where id = ${id}`.execute(on.db),
    ).rejects.toThrow('never changes');
    await expect(
      sql`update hands_on_check set signed_at = null where id = ${id}`.execute(on.db),
    ).rejects.toThrow('never changes');
    await expect(sql`delete from hands_on_check where id = ${id}`.execute(on.db)).rejects.toThrow(
      'never changes',
    );
    expect(await check(on.db, on.company, id)).toEqual(before);
    const trail = await on.db
      .selectFrom('audit_entry')
      .select('action')
      .where('subject', '=', id)
      .orderBy('place')
      .execute();
    expect(trail.map(({ action }) => action)).toEqual([
      'begin hands-on check',
      'sign hands-on check',
      'close hands-on check',
    ]);
  });

  test('two signatures at once make one result', async () => {
    const id = await begun(on, ed, application);
    const sheet = await filled(on, id);
    const both = await Promise.all([signed(on, ed, { id, sheet }), signed(on, ed, { id, sheet })]);
    expect(both.map((one) => one.ok && one.value.signed).toSorted()).toEqual(['before', 'now']);
  });

  test('what was filled in without signal on two devices is merged, once, the later word standing', async () => {
    const id = await begun(on, ed, application);
    const points = pointsOf(await bundleOf(on, id)).filter(({ kind }) => kind === 'done');
    const [a, b, c] = points.map((point) => point.id) as [string, string, string];
    const act = onDay(ed.act, 1);
    const phone = { [a]: { at: days(0.1), says: 'right' }, [b]: { at: days(0.3), says: 'wrong' } };
    const tablet = { [b]: { at: days(0.2), says: 'right' }, [c]: { at: days(0.2), says: 'right' } };
    await save(on.db, act, { id, sheet: phone });
    await save(on.db, act, { id, sheet: tablet });
    const again = await save(on.db, act, { id, sheet: phone });
    expect(again).toEqual({ ok: true, value: { ...tablet, ...phone } });
    await Promise.all([1, 2, 3].map(() => save(on.db, act, { id, sheet: tablet })));
    expect((await check(on.db, on.company, id))?.sheet).toEqual({ ...tablet, ...phone });
  });

  test('what is no sheet is refused and changes nothing', async () => {
    const id = await begun(on, ed, application);
    for (const sheet of [7, null, [], { 'no/such': { at: days(0), says: 'right' } }]) {
      expect((await save(on.db, ed.act, { id, sheet })).ok).toBe(false);
    }
    expect((await check(on.db, on.company, id))?.sheet).toEqual({});
  });

  test('a measure that nobody can read is not signed', async () => {
    const id = await begun(on, ed, application);
    const sheet = { 'snap-line/setting/turn-up': { at: days(0), says: 'about so' } };
    expect(await signed(on, ed, { id, sheet })).toEqual({
      ok: false,
      error: [{ code: 'UNREADABLE', line: 'snap-line/setting/turn-up' }],
    });
  });

  test('only its examiner sees and fills it, by their own password', async () => {
    const id = await begun(on, ed, application);
    const eva = await on.signer('Eva');
    expect(await save(on.db, eva.act, { id, sheet: {} })).toMatchObject({
      error: [{ code: 'ABSENT' }],
    });
    expect(await signed(on, eva, { id, sheet: {} })).toMatchObject({ error: [{ code: 'ABSENT' }] });
    const sheet = await filled(on, id);
    expect(await signed(on, ed, { id, sheet, password: 'another password' })).toEqual({
      ok: false,
      error: [{ code: 'NOT_RIGHT' }],
    });
    expect((await check(on.db, on.company, id))?.signedAt).toBeNull();
  });

  test('who guesses at the password is made to wait, even with the right one', async () => {
    const gus = await on.signer('Gus Guesses');
    const id = await begun(on, gus, application);
    const sheet = await filled(on, id);
    for (let tries = 0; tries < 10; tries += 1) {
      await signed(on, gus, { id, sheet, password: 'another password' });
    }
    expect(await signed(on, gus, { id, sheet, password })).toMatchObject({
      error: [{ code: 'TOO_OFTEN' }],
    });
  });

  test('asked for twice, one check is begun; another examiner finds it under way', async () => {
    const asked = { id: freshId(), application, part: realWall };
    const both = await Promise.all([
      begin(on.db, ed.act, content, asked),
      begin(on.db, ed.act, content, { ...asked, id: freshId() }),
      begin(on.db, ed.act, content, asked),
    ]);
    expect(new Set(both.map((one) => one.ok && one.value)).size).toBe(1);
    const eva = await on.signer('Eva');
    expect(await begin(on.db, eva.act, content, { ...asked, id: freshId() })).toEqual({
      ok: false,
      error: { code: 'UNDER_WAY' },
    });
  });

  describe('who keeps out', () => {
    const tried = async (by: Signer, when = 0) =>
      begin(on.db, onDay(by.act, when), content, { id: freshId(), application, part: realWall });
    const trained = (from: string) => ({
      ok: false,
      error: { code: 'KEPT_OUT', why: [{ code: 'TRAINED', from }] },
    });

    test('who trained the candidate, as it was entered, until that was long enough ago', async () => {
      const { person } = ed.act.by;
      const candidate = on.candidate.by.person;
      const enter = (day: string) => enterTrainer(on.db, on.office, { candidate, person, on: day });
      expect(await enter('2029-05-01')).toEqual({ ok: true, value: true });
      expect(await enter('2029-05-01')).toEqual({ ok: true, value: true });
      expect(await enter('2030-05-02')).toEqual({ ok: false, error: 'DAY_AHEAD' });
      expect(await enter('soon')).toEqual({ ok: false, error: 'NOT_A_DAY' });
      expect(await tried(ed)).toEqual(trained('2031-05-01'));
      expect((await tried(ed, 365)).ok).toBe(true);
    });

    test('who gave them work, or said something of what they tried', async () => {
      const { person } = on.candidate.by;
      const given = await compose(on.db, ed.act, content, draft({ persons: [person] }));
      expect(given.ok).toBe(true);
      expect(await tried(ed)).toEqual(trained('2032-05-01'));

      const eva = await on.signer('Eva');
      const attempt = freshId();
      await on.db
        .insertInto('attempt')
        .values({
          id: attempt,
          company_id: on.company,
          person_id: person,
          kind: 'mockup',
          about: 'base-of-wall',
          played: '{}',
          finished_at: days(-3),
          received_at: days(-3),
          content_revision: 'r',
        })
        .execute();
      const act = onDay(eva.act, -2);
      await say(on.db, act, { attempt, kind: 'comment', reason: 'Lap it.' });
      expect(await tried(eva)).toEqual(trained('2032-04-29'));
    });

    test('who gave work to their crew', async () => {
      const crew = freshId();
      const values = { id: crew, company_id: on.company, name: 'North', created_at: days(-9) };
      await on.db.insertInto('crew').values(values).execute();
      const { person } = on.candidate.by;
      await on.db.updateTable('person').set({ crew_id: crew }).where('id', '=', person).execute();
      await compose(on.db, ed.act, content, draft({ crews: [crew] }));
      expect(await tried(ed)).toEqual(trained('2032-05-01'));
    });

    test('the candidate', async () => {
      const own = { act: on.candidate, login: '' };
      expect(await tried(own)).toMatchObject({
        error: { code: 'KEPT_OUT', why: [{ code: 'IS_CANDIDATE' }] },
      });
    });

    test('who began to train them while the check was under way does not sign it', async () => {
      const id = await begun(on, ed, application);
      await compose(on.db, ed.act, content, draft({ persons: [on.candidate.by.person] }));
      const sheet = await filled(on, id);
      expect(await signed(on, ed, { id, sheet })).toMatchObject({
        error: [{ code: 'KEPT_OUT', why: [{ code: 'TRAINED' }] }],
      });
    });
  });

  test('what it is judged by stays with it, whatever the content says later', async () => {
    const id = await begun(on, ed, application);
    const newer = { ...content, revision: 'newer', methods: new Map(content.methods) };
    const bundle = await bundleOf(on, id);
    expect(bundle.revision).toBe(content.revision);
    expect(checkedSequence(bundle).steps.length).toBeGreaterThan(5);
    await expect(
      sql`update check_basis set bundle = '' where part = ${realWall}`.execute(on.db),
    ).rejects.toThrow('append-only');
    const other = await site(records);
    const eva = await other.signer();
    const given = { id: freshId(), application: await applied(other), part: realWall };
    await begin(other.db, eva.act, newer, given);
    expect((await check(other.db, other.company, given.id))?.content_revision).toBe('newer');
    expect((await bundleOf(on, id)).revision).toBe(content.revision);
  });

  test('nobody of another company finds it', async () => {
    const id = await begun(on, ed, application);
    const other = await site(records);
    const eva = await other.signer();
    expect(await check(other.db, other.company, id)).toBeUndefined();
    expect(
      await begin(other.db, eva.act, content, { id: freshId(), application, part: realWall }),
    ).toEqual({ ok: false, error: { code: 'ABSENT' } });
  });

  test('a point that does not weigh much may be wrong, and the share says so', async () => {
    const id = await begun(on, ed, application);
    const sheet = await filled(on, id, { wrong: [await minor(id)] });
    expect(await signed(on, ed, { id, sheet })).toMatchObject({ value: { outcome: 'passed' } });
    const { share } = (await result(id))!;
    expect(share).toBeGreaterThan(0.85);
    expect(share).toBeLessThan(1);
  });
});
