import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { verify } from '#server/audit/audit-trail.ts';
import { lastIssue } from '#server/certificates/issues.ts';
import { isPublicId } from '#server/certificates/public-id.ts';
import { freshId } from '#server/fresh-id.ts';
import type { Act } from '#server/people/member.ts';
import { added, at, deeds, freshCompany } from '../people/company.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { certificateRow, granted, scheme } from './granted.ts';

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let act: Act;
  let person: string;
  beforeAll(async () => {
    records = await freshRecords(kind);
    act = await freshCompany(records.db);
    person = await added(records.db, act, { name: 'Ana Apprentice' });
  });
  afterAll(() => records.drop());

  /** A decision to grant, on two parts passed, one of them twice, and one not yet released. */
  const ruled = async (): Promise<string> => {
    const { db } = records;
    const [application, ruling] = [freshId(), freshId()];
    const { company, person: by } = act.by;
    await db
      .insertInto('application')
      .values({
        id: application,
        company_id: company,
        person_id: person,
        scheme: scheme.id,
        made_by: by,
        made_at: at,
      })
      .execute();
    const parts = [
      ['knowledge', '2030-04-02', 'failed', at],
      ['knowledge', '2030-04-20', 'passed', at],
      ['quantities', '2030-04-11', 'passed', at],
      ['real-wall', '2030-04-12', 'passed', null],
    ] as const;
    for (const [part, on, result, released] of parts) {
      await db
        .insertInto('part_result')
        .values({
          id: freshId(),
          application_id: application,
          company_id: company,
          person_id: person,
          scheme: scheme.id,
          part,
          on_date: on,
          result,
          examiners: '[]',
          detail: '{}',
          content_revision: 'r',
          made_at: at,
          released_at: released,
        })
        .execute();
    }
    await db
      .insertInto('ruling')
      .values({
        id: ruling,
        company_id: company,
        application_id: application,
        verdict: 'grant',
        by_person_id: by,
        on_date: '2030-05-01',
        because: '',
        asks: '[]',
        evidence: '[]',
        until: '2033-05-01',
        made_at: at,
      })
      .execute();
    return ruling;
  };

  test('a grant writes certificate, history, issue and audit entry', async () => {
    const { db } = records;
    const id = await granted(db, act, { person, ruling: await ruled() });
    const row = await certificateRow(db, id);
    expect(row).toMatchObject({
      person_id: person,
      scheme: 'base-of-wall-installer',
      granted_on: '2030-05-01',
      valid_until: '2033-05-01',
      state: 'in-force',
      name_shown: 'initials',
    });
    const events = await db
      .selectFrom('certificate_event')
      .select(['kind', 'by_person_id', 'at'])
      .where('certificate_id', '=', id)
      .execute();
    expect(events).toEqual([{ kind: 'granted', by_person_id: act.by.person, at }]);
    expect(await deeds(db, act.by.company, id)).toEqual(['grant certificate']);
    const issue = await lastIssue(db, id);
    expect(issue).toMatchObject({
      number: 1,
      name: 'Ana Apprentice',
      evidence: [
        { part: 'quantities', on: '2030-04-11' },
        { part: 'knowledge', on: '2030-04-20' },
      ],
    });
    expect(issue?.scope.walls).toEqual([
      {
        method: { en: 'Base of wall', es: 'Base del muro' },
        where: [
          {
            question: { en: 'Joint', es: 'Junta' },
            answers: [
              { en: 'One sheet, no seam', es: 'Una membrana, sin junta' },
              { en: 'Seam of two sheets', es: 'Junta de dos membranas' },
            ],
          },
          {
            question: { en: 'Corner', es: 'Esquina' },
            answers: [{ en: 'No corner', es: 'Sin esquina' }],
          },
        ],
      },
    ]);
    expect((await verify(db, act.by.company)).faults).toEqual([]);
  });

  test('the public id is 128 bits of chance and nothing of the row', async () => {
    const { db } = records;
    const ids = [await granted(db, act, { person }), await granted(db, act, { person })];
    const known = await Promise.all(ids.map((id) => certificateRow(db, id)));
    const seen = known.map((row) => row.public_id);
    expect(seen.every(isPublicId)).toBe(true);
    expect(Buffer.from(seen[0]!, 'base64url')).toHaveLength(16);
    expect(new Set(seen).size).toBe(2);
  });

  test('granting a ruling a second time changes nothing', async () => {
    const ruling = await ruled();
    const first = await granted(records.db, act, { person, ruling });
    expect(await granted(records.db, act, { person, ruling })).toBe(first);
    const events = await records.db
      .selectFrom('certificate_event')
      .select('id')
      .where('certificate_id', '=', first)
      .execute();
    expect(events).toHaveLength(1);
  });

  test('a renewal is linked from the one before, which stays in force', async () => {
    const { db } = records;
    const first = await granted(db, act, { person });
    const second = await granted(db, act, { person, renews: first });
    expect(await certificateRow(db, first)).toMatchObject({
      replaced_by: second,
      state: 'in-force',
    });
    const events = await db
      .selectFrom('certificate_event')
      .select('kind')
      .where('certificate_id', '=', first)
      .orderBy('id')
      .execute();
    expect(events.map((event) => event.kind)).toEqual(['granted', 'renewed']);
  });

  test('a certificate of nobody here is not made, nor anything about it', async () => {
    await expect(granted(records.db, act, { person: freshId() })).rejects.toThrow();
    const before = await records.db.selectFrom('certificate').select('id').execute();
    const events = await records.db
      .selectFrom('certificate_event')
      .select('certificate_id')
      .where('kind', '=', 'granted')
      .execute();
    expect(events).toHaveLength(before.length);
  });
});
