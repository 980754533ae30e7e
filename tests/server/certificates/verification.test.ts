import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { change } from '#server/certificates/life.ts';
import { showName } from '#server/certificates/name-shown.ts';
import { freshPublicId } from '#server/certificates/public-id.ts';
import { verification } from '#server/certificates/verification.ts';
import { ask, openDoor, verificationAnswer } from '#server/certificates/verify-door.ts';
import { freshId } from '#server/fresh-id.ts';
import { erase } from '#server/people/erasure.ts';
import type { Act } from '#server/people/member.ts';
import type { IsoDate } from '#engine/calendar.ts';
import { actOf, added, at, freshCompany } from '../people/company.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { certificateRow, granted } from './granted.ts';

describe.each(kinds)('%s', (kind) => {
  const askers = openDoor();
  let records: Records;
  let act: Act;
  beforeAll(async () => {
    records = await freshRecords(kind);
    act = await freshCompany(records.db);
  });
  afterAll(() => records.drop());

  const holder = async () => {
    const { db } = records;
    const person = await added(db, act, { name: 'Ana María Ruiz', number: freshId().slice(0, 18) });
    const id = await granted(db, act, { person });
    const { public_id: publicId } = await certificateRow(db, id);
    return { person, id, publicId };
  };
  const on = (publicId: string, day: string) => verification(records.db, publicId, day as IsoDate);

  test('a stranger reads state, scope, dates and initials, and no more', async () => {
    const { publicId, id, person } = await holder();
    const read = await on(publicId, '2031-01-01');
    expect(Object.keys(read!).toSorted()).toEqual(
      [
        'state',
        'issuer',
        'isDemo',
        'name',
        'scope',
        'grantedOn',
        'validUntil',
        'since',
        'issue',
      ].toSorted(),
    );
    expect(read).toMatchObject({
      state: 'current',
      issuer: 'Test company',
      name: 'A. M. R.',
      grantedOn: '2030-05-01',
      validUntil: '2033-05-01',
      since: null,
      issue: 1,
      scope: { title: { en: 'Base of wall installer' } },
    });
    const text = JSON.stringify(read);
    for (const hidden of ['Ana', 'Ruiz', id, person, act.by.company, publicId]) {
      expect(text).not.toContain(hidden);
    }
  });

  test('the name is as the holder allows', async () => {
    const { publicId, id, person } = await holder();
    const holding = actOf(act.by.company, person, ['apprentice']);
    for (const [shown, name] of [
      ['full', 'Ana María Ruiz'],
      ['initials', 'A. M. R.'],
      ['none', null],
    ] as const) {
      await showName(records.db, holding, id, shown);
      expect((await on(publicId, '2031-01-01'))?.name).toBe(name);
    }
  });

  test('it is due, expired, suspended and withdrawn as the days and the office say', async () => {
    const { publicId, id } = await holder();
    const state = async (day: string) => (await on(publicId, day))?.state;
    expect(await state('2032-10-31')).toBe('current');
    expect(await state('2032-11-01')).toBe('due');
    expect(await state('2033-05-02')).toBe('expired');
    const doing = (what: 'suspend' | 'withdraw') =>
      change(records.db, act, id, { id: freshId(), change: what, reason: 'A grave reason.' });
    await doing('suspend');
    const suspended = await on(publicId, '2031-01-01');
    expect(suspended).toMatchObject({ state: 'suspended', since: '2030-05-01' });
    expect(JSON.stringify(suspended)).not.toContain('grave');
    await doing('withdraw');
    expect(await state('2031-01-01')).toBe('withdrawn');
  });

  test('of an erased holder it says withdrawn, and nothing of who or what', async () => {
    const { publicId, person } = await holder();
    await erase(records.db, { company: act.by.company, actor: null, at }, person);
    expect(await on(publicId, '2031-01-01')).toMatchObject({
      state: 'withdrawn',
      name: null,
      scope: null,
      issue: 0,
    });
  });

  test('an address that nobody has and one that cannot be are answered alike', async () => {
    const { db } = records;
    const { id } = await holder();
    const asked = [freshPublicId(), 'x', '', id, '../keys', 'A'.repeat(5000), '%00'];
    const answers = await Promise.all(
      asked.map(async (publicId, place) => {
        const answer = verificationAnswer(
          await ask({ db, askers }, publicId, `192.0.2.${place}`, at),
        );
        return [answer.status, await answer.text(), [...answer.headers]];
      }),
    );
    expect(answers[0]?.slice(0, 2)).toEqual([404, '{"error":"ABSENT"}']);
    for (const answer of answers) expect(answer).toEqual(answers[0]);
  });

  test('who looks for what is not there is stopped soon; who asks for what is there, late', async () => {
    const { db } = records;
    const { publicId } = await holder();
    const codes = async (times: number, asked: () => string, address: string) => {
      const counts = new Map<string, number>();
      for (let each = 0; each < times; each += 1) {
        const answer = await ask({ db, askers }, asked(), address, at);
        const code = answer.ok ? 'OK' : answer.error.code;
        counts.set(code, (counts.get(code) ?? 0) + 1);
      }
      return Object.fromEntries(counts);
    };
    expect(await codes(40, freshPublicId, '192.0.2.50')).toEqual({ ABSENT: 30, TOO_OFTEN: 10 });
    expect(await codes(250, () => publicId, '192.0.2.51')).toEqual({ OK: 240, TOO_OFTEN: 10 });
    const late = verificationAnswer(await ask({ db, askers }, publicId, '192.0.2.51', at));
    expect(late.status).toBe(429);
    expect(Number(late.headers.get('retry-after'))).toBeGreaterThan(0);
    const minuteLater = new Date(Date.parse(at) + 61_000).toISOString();
    expect((await ask({ db, askers }, publicId, '192.0.2.51', minuteLater)).ok).toBe(true);
  });
});
