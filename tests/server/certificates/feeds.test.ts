import ICAL from 'ical.js';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { IsoDate } from '#engine/calendar.ts';
import { feed, type FeedKind, feedsOf, makeFeed } from '#server/certificates/feeds.ts';
import { listed, own } from '#server/certificates/holdings.ts';
import { change } from '#server/certificates/life.ts';
import { freshId } from '#server/fresh-id.ts';
import type { Act } from '#server/people/member.ts';
import { actOf, added, at, freshCompany } from '../people/company.ts';
import { allText } from '../people/staff.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { granted } from './granted.ts';

const origin = 'https://underlap.example';

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let act: Act;
  let holding: Act;
  let lasting: string;
  beforeAll(async () => {
    records = await freshRecords(kind);
    const { db } = records;
    act = await freshCompany(db);
    const ana = await added(db, act, { name: 'Ana Ruiz' });
    const luis = await added(db, act, { name: 'Luis Peña' });
    holding = actOf(act.by.company, ana, ['apprentice']);
    lasting = await granted(db, act, { person: ana });
    const ended = await granted(db, act, { person: ana, validUntil: '2030-04-30' as IsoDate });
    const renewed = await granted(db, act, { person: ana, validUntil: '2030-06-30' as IsoDate });
    await granted(db, act, { person: ana, renews: renewed });
    const stopped = await granted(db, act, { person: luis });
    const asked = { id: freshId(), change: 'withdraw', reason: 'No more work.' } as const;
    await change(db, act, stopped, asked);
    await granted(db, act, { person: luis, validUntil: '2030-05-31' as IsoDate });
    expect(ended).not.toBe(lasting);
  });
  afterAll(() => records.drop());

  const made = async (by: Act, about: FeedKind) => (await makeFeed(records.db, by, about))!;
  const fetched = (secret: string, when = at, address = '192.0.2.1') =>
    feed(records.db, { secret, address }, { origin, at: when });
  const daysIn = (text: string): readonly string[] =>
    new ICAL.Component(ICAL.parse(text) as ConstructorParameters<typeof ICAL.Component>[0])
      .getAllSubcomponents('vevent')
      .map((event) => String(event.getFirstPropertyValue('dtstart')));

  test('one’s own calendar has what is to be renewed, and nothing that ended or goes on', async () => {
    const read = await fetched(await made(holding, 'own'));
    if (!read.ok) throw new Error(read.error);
    expect(daysIn(read.value)).toEqual(['2033-05-01', '2033-05-01']);
    expect(read.value).toContain(`UID:${lasting}@underlap.example`);
    expect(read.value).not.toContain('Ana');
  });

  test('that of the company has everybody’s, with names, for those who see certificates', async () => {
    const read = await fetched(await made(act, 'company'));
    if (!read.ok) throw new Error(read.error);
    expect(daysIn(read.value)).toEqual(['2030-05-31', '2033-05-01', '2033-05-01']);
    expect(read.value).toContain('Luis Peña');
    expect(await makeFeed(records.db, holding, 'company')).toBeUndefined();
  });

  test('another address stops the one before; the secret itself is nowhere', async () => {
    const first = await made(holding, 'own');
    expect(await allText(records)).not.toContain(first);
    const second = await made(holding, 'own');
    expect(await fetched(first)).toEqual({ ok: false, error: 'ABSENT' });
    expect((await fetched(second)).ok).toBe(true);
    expect(await feedsOf(records.db, holding.by.person)).toEqual([{ about: 'own', madeAt: at }]);
  });

  test('who has no longer the right, or has left, is told nothing', async () => {
    const { db } = records;
    const other = await added(db, act, { name: 'Olga Second', roles: ['office'] });
    const theirs = actOf(act.by.company, other, ['office']);
    const [company, mine] = [await made(theirs, 'company'), await made(theirs, 'own')];
    await db.updateTable('person').set({ roles: 'apprentice' }).where('id', '=', other).execute();
    expect(await fetched(company)).toEqual({ ok: false, error: 'ABSENT' });
    expect((await fetched(mine)).ok).toBe(true);
    await db.updateTable('person').set({ left_at: at }).where('id', '=', other).execute();
    expect(await fetched(mine)).toEqual({ ok: false, error: 'ABSENT' });
  });

  test('guessing is slowed down', async () => {
    const codes: string[] = [];
    for (let each = 0; each < 125; each += 1) {
      const read = await fetched(`guess-${each}`, at, '192.0.2.9');
      codes.push(read.ok ? 'OK' : read.error);
    }
    expect(codes.filter((code) => code === 'ABSENT')).toHaveLength(120);
    expect(codes.filter((code) => code === 'TOO_OFTEN')).toHaveLength(5);
  });

  test('the office sees first what asks for something, with its reminder', async () => {
    const { db } = records;
    const today = '2030-05-01' as IsoDate;
    const { company } = act.by;
    const urgent = await listed(db, company, { show: 'attention', search: '', today });
    expect(urgent.certificates.map(({ validUntil, reminder }) => [validUntil, reminder])).toEqual([
      ['2030-04-30', 'ended'],
      ['2030-05-31', 30],
    ]);
    const found = await listed(db, company, { show: 'all', search: 'PENA', today });
    expect(found.certificates.map(({ name }) => name)).toEqual(['Luis Peña', 'Luis Peña']);
    expect(found).toMatchObject({ more: 0, count: 6 });
    const mine = await own(db, company, holding.by.person, today);
    expect(mine.map(({ isRenewed }) => isRenewed).filter(Boolean)).toHaveLength(1);
  });
});
