import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  application,
  list,
  openApplication,
  pastOf,
  standingFor,
} from '#server/exams/applications.ts';
import { freshId } from '#server/fresh-id.ts';
import type { SchemeId } from '#engine/exam/scheme.ts';
import type { IsoDate } from '#engine/calendar.ts';
import { deeds } from '../people/company.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { at, content, examStaff, hold, opened, scheme, type Staff } from './candidate.ts';

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  beforeAll(async () => {
    records = await freshRecords(kind);
  });
  afterAll(() => records.drop());

  const open = (staff: Staff, of = scheme, person = staff.candidate.by.person) =>
    openApplication(records.db, staff.office, content, { person, scheme: of });

  test('one that is opened is listed, stands in the trail, and asks for every part', async () => {
    const staff = await examStaff(records.db);
    const id = await opened(records.db, staff);
    const made = await application(records.db, staff.company, id);
    expect(made).toMatchObject({ personName: 'Ana Apprentice', scheme, renews: undefined });
    const { applications, next } = await list(records.db, staff.company, { when: 'open' });
    expect([applications.map((one) => one.id), next]).toEqual([[id], undefined]);
    expect(await deeds(records.db, staff.company, id)).toEqual(['open application']);
    const known = content.schemes.get(scheme as SchemeId)!;
    const standing = await standingFor(records.db, known, made!, at.slice(0, 10) as IsoDate);
    expect(standing.parts.map(({ state }) => state.kind)).toEqual(Array(4).fill('may-take'));
  });

  test('a second one for the same scheme is refused while the first is open', async () => {
    const staff = await examStaff(records.db);
    await opened(records.db, staff);
    expect(await open(staff)).toEqual({ ok: false, error: { code: 'OPEN_ALREADY' } });
  });

  test('nobody is known from another company, nor any scheme that is not there', async () => {
    const [staff, other] = [await examStaff(records.db), await examStaff(records.db)];
    const stranger = await open(staff, scheme, other.candidate.by.person);
    expect(stranger).toEqual({ ok: false, error: { code: 'UNKNOWN_PERSON' } });
    expect(await open(staff, 'no-scheme')).toEqual({
      ok: false,
      error: { code: 'UNKNOWN_SCHEME' },
    });
    const id = await opened(records.db, staff);
    expect(await application(records.db, other.company, id)).toBeUndefined();
  });

  test('a scheme that asks for a certificate is refused without it, and opened with it', async () => {
    const staff = await examStaff(records.db);
    const schemes = ['base-of-wall-installer'];
    const error = { code: 'NEEDS_CERTIFICATE', schemes };
    expect(await open(staff, 'corners-and-seams')).toEqual({ ok: false, error });
    await hold(records.db, staff, { scheme, until: '2030-04-30' });
    expect(await open(staff, 'corners-and-seams')).toEqual({ ok: false, error });
    await hold(records.db, staff, { scheme, until: '2030-05-01' });
    expect(await open(staff, 'corners-and-seams')).toMatchObject({ ok: true });
  });

  test('a suspended certificate is not held, and has to be settled before it is renewed', async () => {
    const staff = await examStaff(records.db);
    await hold(records.db, staff, { scheme, until: '2030-08-01', state: 'suspended' });
    expect(await open(staff, 'corners-and-seams')).toMatchObject({
      error: { code: 'NEEDS_CERTIFICATE' },
    });
    expect(await open(staff)).toEqual({ ok: false, error: { code: 'SUSPENDED' } });
  });

  test('a certificate is renewed once it is due, with fewer parts, and not before', async () => {
    const staff = await examStaff(records.db);
    const early = await hold(records.db, staff, { scheme, until: '2030-11-02' });
    expect(await open(staff)).toEqual({
      ok: false,
      error: { code: 'NOT_DUE', from: '2030-05-02' },
    });
    const due = await examStaff(records.db);
    const held = await hold(records.db, due, { scheme, until: '2030-11-01' });
    const made = await opened(records.db, due);
    const known = await application(records.db, due.company, made);
    expect(known?.renews).toEqual({ id: held, until: '2030-11-01' });
    expect(early).not.toBe(held);
    const of = content.schemes.get(scheme as SchemeId)!;
    const standing = await standingFor(records.db, of, known!, at.slice(0, 10) as IsoDate);
    expect(standing.parts.map(({ part }) => part)).toEqual(['knowledge', 'practice-walls']);
  });

  test('a result counts as a try once it is released', async () => {
    const staff = await examStaff(records.db);
    const id = await opened(records.db, staff);
    const result = async (released: string | null) =>
      records.db
        .insertInto('part_result')
        .values({
          id: freshId(),
          application_id: id,
          company_id: staff.company,
          person_id: staff.candidate.by.person,
          scheme,
          part: 'knowledge',
          on_date: '2030-04-30',
          result: 'failed',
          examiners: '[]',
          detail: '{}',
          content_revision: 'r',
          made_at: at,
          released_at: released,
        })
        .execute();
    const of = { id: scheme as SchemeId };
    await result(null);
    expect((await pastOf(records.db, staff.candidate.by.person, of)).tried).toEqual([]);
    await result(at);
    const { tried } = await pastOf(records.db, staff.candidate.by.person, of);
    expect(tried).toEqual([{ part: 'knowledge', on: '2030-04-30', result: 'failed' }]);
  });
});
