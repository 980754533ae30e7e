import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { verify } from '#server/audit/audit-trail.ts';
import { schemesNow } from '#server/board/qualifications.ts';
import type { Scheme } from '#engine/exam/scheme.ts';
import * as declared from '#server/declared/declared.ts';
import { freshId } from '#server/fresh-id.ts';
import type { GivenJob } from '#server/jobs/job-form.ts';
import * as jobs from '#server/jobs/jobs.ts';
import { planJob, send } from '#server/jobs/plan-job.ts';
import type { Act } from '#server/people/member.ts';
import { certify, crewNamed, daysFrom } from '../board/crewed.ts';
import { added, at, deeds, freshCompany } from '../people/company.ts';
import { freshRecords, kinds, type Records } from '../records.ts';

const base = 'base-of-wall-installer';
const given: GivenJob = {
  title: 'East wall',
  place: 'Harrow Mill',
  startsOn: daysFrom(10),
  endsOn: daysFrom(20),
  note: '',
  roles: [{ title: 'Installers', count: 2, needs: [base] }],
  travel: [],
};

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let schemes: readonly Scheme[];
  let act: Act;
  beforeAll(async () => {
    records = await freshRecords(kind);
    schemes = await schemesNow();
  });
  beforeEach(async () => {
    act = await freshCompany(records.db);
  });
  afterAll(() => records.drop());

  const ids = () => schemes.map(({ id }) => id as string);
  const kept = async (change: Partial<GivenJob> = {}) => {
    const made = await jobs.keep(records.db, act, ids(), freshId(), { ...given, ...change });
    if (!made.ok) throw new Error(made.error);
    return made.value;
  };
  const planned = async (id: string) => {
    const job = await jobs.one(records.db, act.by.company, id);
    return planJob(records.db, act.by.company, at, schemes, job!);
  };
  const holder = async (name: string, until = 900, crew = '') => {
    const person = await added(records.db, act, { name, crew });
    await certify(records.db, act, { person, scheme: base, validUntil: daysFrom(until) });
    return person;
  };

  test('a job is kept once, with its roles in order, and stands in the audit trail', async () => {
    const { db } = records;
    const crew = await crewNamed(db, act, 'North');
    const id = freshId();
    const asked = {
      ...given,
      roles: [...given.roles, { title: ' Lead ', count: '1', needs: ['crew-lead', 'crew-lead'] }],
      travel: [{ crew, miles: '12' }],
    };
    for (let again = 0; again < 2; again += 1) {
      expect(await jobs.keep(db, act, ids(), id, asked)).toEqual({ ok: true, value: id });
    }
    const job = await jobs.one(db, act.by.company, id);
    expect(job!.roles).toMatchObject([
      { title: 'Installers', count: 2, needs: [base] },
      { title: 'Lead', count: 1, needs: ['crew-lead'] },
    ]);
    expect(job!.travel).toEqual(new Map([[crew, 12]]));
    expect(await deeds(db, act.by.company, id)).toEqual(['plan job']);
    expect(await verify(db, act.by.company)).toMatchObject({ faults: [] });
  });

  test.each([
    [{ title: ' ' }, 'TITLE_WRONG'],
    [{ place: '' }, 'PLACE_WRONG'],
    [{ startsOn: '2030-02-30' }, 'DAYS_WRONG'],
    [{ endsOn: daysFrom(9) }, 'DAYS_WRONG'],
    [{ roles: [] }, 'ROLES_WRONG'],
    [{ roles: [{ title: 'x', count: 0, needs: [base] }] }, 'ROLES_WRONG'],
    [{ roles: [{ title: 'x', count: 1, needs: [] }] }, 'ROLES_WRONG'],
    [{ roles: [{ title: 'x', count: 1, needs: ['roofer'] }] }, 'UNKNOWN_QUALIFICATION'],
    [{ travel: [{ crew: freshId(), miles: 3 }] }, 'UNKNOWN_CREW'],
    [{ travel: [{ crew: freshId(), miles: -3 }] }, 'TRAVEL_WRONG'],
    [{ note: 'x'.repeat(501) }, 'NOTE_WRONG'],
  ] as const)('%j is refused as %s', async (change, error) => {
    const job = { ...given, ...change } as GivenJob;
    expect(await jobs.keep(records.db, act, ids(), freshId(), job)).toEqual({ ok: false, error });
    expect(await jobs.list(records.db, act.by.company, daysFrom(0), 'ahead')).toEqual([]);
  });

  test('nobody reads, closes or overwrites a job of another company', async () => {
    const id = await kept();
    const other = await freshCompany(records.db);
    expect(await jobs.one(records.db, other.by.company, id)).toBeUndefined();
    expect(await jobs.close(records.db, other, id)).toMatchObject({ error: 'ABSENT' });
    expect(await jobs.keep(records.db, other, ids(), id, given)).toMatchObject({ error: 'ABSENT' });
    expect(await send(records.db, other, schemes, id, [])).toMatchObject({ error: 'ABSENT' });
  });

  test('a certificate that is declared, not verified, fills no place', async () => {
    const { db } = records;
    const asked = { ...given, roles: [{ title: 'Installers', count: 1, needs: [base] }] };
    const declaring = await added(db, act, { name: 'Declaring' });
    const job = await kept(asked);
    const without = await planned(job);
    const said = { title: 'Base of wall installer', issuer: 'Elsewhere', number: '', scheme: base };
    const kind = { ...said, issuedOn: daysFrom(-10), validUntil: daysFrom(900) };
    const wanted = { id: freshId(), person: declaring, schemes: ids() };
    expect(await declared.declare(db, act, wanted, kind)).toEqual({ ok: true, value: true });
    const { fit } = await planned(job);
    expect(fit.sent).toEqual([]);
    expect(fit).toEqual(without.fit);
    expect(await send(db, act, schemes, job, [declaring])).toMatchObject({ ok: false });
    // The same person once certified is sent: it was the certificate that was wanting.
    await certify(db, act, { person: declaring, scheme: base, validUntil: daysFrom(900) });
    expect((await planned(job)).fit.sent).toMatchObject([{ person: declaring }]);
  });

  test('the nearer crew goes, and a crew whose way is unknown counts as the farthest', async () => {
    const { db } = records;
    const [near, far] = [await crewNamed(db, act, 'Near'), await crewNamed(db, act, 'Far')];
    await holder('Far one', 900, far);
    const loose = await holder('Loose one');
    const two = [await holder('Near one', 900, near), await holder('Near two', 900, near)];
    const travel = [
      { crew: near, miles: 4 },
      { crew: far, miles: 60 },
    ];
    const { fit, people } = await planned(await kept({ travel }));
    expect(fit.sent.map(({ person }) => person).toSorted()).toEqual(two.toSorted());
    expect(fit.travel).toBe(8);
    expect(people.get(two[0]!)).toMatchObject({ name: 'Near one', crewName: 'Near' });
    const three = await kept({ travel, roles: [{ title: 'x', count: 4, needs: [base] }] });
    const sent = (await planned(three)).fit.sent;
    expect(sent.find(({ person }) => person === loose)!.travel).toBe(60);
  });

  test('a certificate must hold on the last day of the job, that day included', async () => {
    const onDay = await holder('On the day', 20);
    await holder('A day short', 19);
    const { fit } = await planned(await kept());
    expect(fit.sent.map(({ person }) => person)).toEqual([onDay]);
    expect(fit.shortages).toMatchObject([{ places: 2, people: [onDay] }]);
    expect(fit.training!.stillShort).toBe(0);
    expect(fit.training!.lessons).toMatchObject([{ qualifications: [base] }]);
  });

  test('a renewal that is open asks for fewer parts than a first certificate', async () => {
    const { db } = records;
    await holder('One');
    const renews = await holder('Renews', 19);
    await added(db, act, { name: 'Newcomer' });
    const { fit } = await planned(await kept());
    const scheme = schemes.find(({ id }) => id === base)!;
    expect(fit.training!.lessons).toMatchObject([
      { person: renews, parts: scheme.renewal.parts.length },
    ]);
    expect(scheme.renewal.parts.length).toBeLessThan(scheme.parts.length);
  });

  test('who is suspended is not sent, and no training brings them', async () => {
    const { db } = records;
    const person = await added(db, act, { name: 'Suspended' });
    await certify(db, act, { person, scheme: base, state: 'suspended', validUntil: daysFrom(900) });
    const only = await kept({ roles: [{ title: 'x', count: 99, needs: [base] }] });
    const { fit } = await planned(only);
    expect(fit.sent).toEqual([]);
    expect(fit.training!.lessons.map((one) => one.person)).toEqual([act.by.person]);
    expect(fit.training!.stillShort).toBe(98);
  });

  test('who is sent is taken on those days, and free again once the job is closed', async () => {
    const { db } = records;
    const two = [await holder('Ana'), await holder('Ben')];
    const first = await kept();
    expect(await send(db, act, schemes, first, two)).toEqual({ ok: true, value: 2 });
    expect([...(await jobs.one(db, act.by.company, first))!.sent.keys()].toSorted()).toEqual(
      two.toSorted(),
    );
    const beside = await kept({ startsOn: daysFrom(20), endsOn: daysFrom(21) });
    const after = await kept({ startsOn: daysFrom(21), endsOn: daysFrom(22) });
    expect((await planned(beside)).fit.sent).toEqual([]);
    expect((await planned(after)).fit.sent).toHaveLength(2);
    expect((await planned(first)).fit.sent).toHaveLength(2);
    await jobs.close(db, act, first);
    expect((await planned(beside)).fit.sent).toHaveLength(2);
    expect(await deeds(db, act.by.company, first)).toEqual([
      'plan job',
      'send to job',
      'close job',
    ]);
  });

  test('nobody is sent by a plan that has changed since it was looked at, or that is short', async () => {
    const { db } = records;
    const ana = await holder('Ana');
    const id = await kept();
    expect(await send(db, act, schemes, id, [ana])).toMatchObject({ error: 'SHORT' });
    await holder('Ben');
    expect(await send(db, act, schemes, id, [ana])).toMatchObject({ error: 'CHANGED' });
    expect((await jobs.one(db, act.by.company, id))!.sent.size).toBe(0);
  });

  test('jobs ahead come soonest first, those over or closed apart', async () => {
    const { db } = records;
    const late = await kept({ startsOn: daysFrom(30), endsOn: daysFrom(31) });
    const soon = await kept({ startsOn: daysFrom(-3), endsOn: daysFrom(0) });
    const over = await kept({ startsOn: daysFrom(-9), endsOn: daysFrom(-1) });
    const closed = await kept();
    await jobs.close(db, act, closed);
    const idsOf = async (when: 'ahead' | 'past') =>
      (await jobs.list(db, act.by.company, daysFrom(0), when)).map(({ id }) => id);
    expect(await idsOf('ahead')).toEqual([soon, late]);
    expect(await idsOf('past')).toEqual([closed, over]);
  });
});
