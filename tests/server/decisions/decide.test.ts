import { sql } from 'kysely';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { Verdict } from '#engine/exam/decision.ts';
import { compose } from '#server/assignments/assignments.ts';
import { verify } from '#server/audit/audit-trail.ts';
import { examsWaiting } from '#server/board/attention.ts';
import { begin } from '#server/checks/begin.ts';
import { appeal } from '#server/decisions/appeals.ts';
import { decide, decideOnAppeal } from '#server/decisions/decide.ts';
import { appealsOn, longestReason, rulingsOn } from '#server/decisions/rulings.ts';
import { waiting } from '#server/decisions/waiting.ts';
import { freshId } from '#server/fresh-id.ts';
import type { Act } from '#server/people/member.ts';
import { draft } from '../assignments/given.ts';
import {
  applied,
  content,
  corners,
  days,
  onDay,
  site,
  type Signer,
  type Site,
} from '../checks/examined.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { allShown, examined, shown } from './shown.ts';

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let on: Site;
  let ed: Signer;
  let delia: Act;
  let ester: Act;
  let application: string;
  beforeAll(async () => {
    records = await freshRecords(kind);
  });
  afterAll(() => records.drop());
  beforeEach(async () => {
    on = await site(records);
    ed = await on.signer();
    delia = await on.person(['office'], 'Delia Decides');
    ester = await on.person(['examiner'], 'Ester Elsewhere');
    application = await applied(on);
  });

  const verdict = (
    by: Act,
    how: Verdict,
    { because = '', asks = [] as readonly string[], id = freshId() } = {},
  ) => decide(on.db, by, content, { id, application, verdict: how, because, asks });
  const onAppeal = (by: Act, how: Verdict, because = 'The log was found.') =>
    decideOnAppeal(on.db, by, content, {
      id: freshId(),
      application,
      verdict: how,
      because,
      asks: how === 'ask-for-more' ? ['real-wall'] : [],
    });
  const appealed = async (by = onDay(on.candidate, 3), because = 'It did not rain.') => {
    const ruling = (await rulingsOn(on.db, application)).at(-1)!.id;
    return appeal(on.db, by, content, { id: freshId(), ruling, because });
  };
  const codes = (outcome: Awaited<ReturnType<typeof verdict | typeof appealed>>) =>
    outcome.ok ? [] : outcome.error.map((one) => ('why' in one ? one.why.code : one.code));
  const certificates = () =>
    on.db
      .selectFrom('certificate')
      .selectAll()
      .where('person_id', '=', on.candidate.by.person)
      .orderBy('granted_on')
      .execute();
  const closedAt = async () =>
    (
      await on.db
        .selectFrom('application')
        .select('closed_at')
        .where('id', '=', application)
        .executeTakeFirstOrThrow()
    ).closed_at;
  const deeds = async () =>
    (
      await on.db
        .selectFrom('audit_entry')
        .select('action')
        .where('company_id', '=', on.company)
        .orderBy('place')
        .execute()
    ).map(({ action }) => action);

  describe('a decision', () => {
    beforeEach(() => allShown(on, application, ed.act.by.person));

    test('grants on complete evidence, with a certificate, and closes the application', async () => {
      expect((await waiting(on.db, on.company, content, days(0))).ready).toMatchObject([
        { application: { id: application } },
      ]);
      const granted = await verdict(delia, 'grant');
      expect(granted.ok && granted.value.certificate).toBeTruthy();
      expect(await certificates()).toMatchObject([
        {
          id: granted.ok && granted.value.certificate,
          state: 'in-force',
          granted_on: '2030-05-01',
          valid_until: '2033-05-01',
        },
      ]);
      expect(await closedAt()).toBe(delia.at);
      expect(await deeds()).toEqual(
        expect.arrayContaining(['open application', 'decide on application', 'grant certificate']),
      );
      expect((await verify(on.db, on.company)).faults).toEqual([]);
      expect((await waiting(on.db, on.company, content, days(0))).ready).toEqual([]);
    });

    test('is made once, however often it is sent, and by one of two who decide at once', async () => {
      const id = freshId();
      const many = await Promise.all([1, 2, 3].map(() => verdict(delia, 'grant', { id })));
      expect(many.every((one) => one.ok && one.value.ruling === id)).toBe(true);
      expect(codes(await verdict(ester, 'refuse', { because: 'Late.' }))).toEqual(['CLOSED']);
      expect(await certificates()).toHaveLength(1);
      expect(await rulingsOn(on.db, application)).toHaveLength(1);
    });

    test('not by whoever examined', async () => {
      expect(codes(await verdict(ed.act, 'grant'))).toEqual(['EXAMINED']);
      expect(codes(await verdict(ed.act, 'refuse', { because: 'No.' }))).toEqual(['EXAMINED']);
    });

    test('nor by whoever trained, though nobody entered it', async () => {
      const { person } = on.candidate.by;
      await compose(on.db, delia, content, draft({ persons: [person] }));
      expect(codes(await verdict(delia, 'grant'))).toEqual(['TRAINED']);
      expect((await verdict(ester, 'grant')).ok).toBe(true);
    });

    test('nor by the candidate', async () => {
      expect(codes(await verdict(on.candidate, 'grant'))).toEqual(['IS_CANDIDATE']);
    });

    test('does not count a check by an examiner who had trained the candidate by then', async () => {
      await compose(
        on.db,
        onDay(ed.act, -9),
        content,
        draft({ due: days(1), persons: [on.candidate.by.person] }),
      );
      const outcome = await verdict(delia, 'grant');
      expect(outcome.ok ? [] : outcome.error).toMatchObject([
        { code: 'EXAMINER_KEPT_OUT', examiner: ed.act.by.person, why: { code: 'TRAINED' } },
      ]);
    });

    test('says why, where it goes against the candidate, and of what more is asked', async () => {
      expect(codes(await verdict(delia, 'refuse'))).toEqual(['NO_REASON']);
      const because = 'The weather log is missing.';
      expect(codes(await verdict(delia, 'ask-for-more', { because }))).toEqual(['ASKS_NOTHING']);
      expect(codes(await verdict(delia, 'ask-for-more', { because, asks: ['singing'] }))).toEqual([
        'UNKNOWN_PART',
      ]);
      expect(
        codes(await verdict(delia, 'refuse', { because: 'x'.repeat(longestReason + 1) })),
      ).toEqual(['TOO_LONG']);
      expect(await rulingsOn(on.db, application)).toEqual([]);
    });

    test('a part of which more is asked can be taken again, though it was passed', async () => {
      const beginning = () =>
        begin(on.db, ester, content, { id: freshId(), application, part: 'real-wall' });
      expect(await beginning()).toMatchObject({ error: { code: 'NOT_NOW' } });
      const because = 'The photos show another wall.';
      await verdict(delia, 'ask-for-more', { because, asks: ['real-wall'] });
      expect(await closedAt()).toBeNull();
      expect((await waiting(on.db, on.company, content, days(1))).ready).toEqual([]);
      expect((await beginning()).ok).toBe(true);
      await shown(on, application, 'real-wall', { on: '2030-05-03', examiners: [ester.by.person] });
      expect((await waiting(on.db, on.company, content, days(3))).ready).toHaveLength(1);
      expect((await verdict(onDay(delia, 3), 'grant')).ok).toBe(true);
    });

    test('stands as it was made: neither it nor what it was made on is ever changed', async () => {
      await verdict(delia, 'grant');
      const [ruling] = await rulingsOn(on.db, application);
      expect(ruling).toMatchObject({
        verdict: 'grant',
        byName: 'Delia Decides',
        until: '2033-05-01',
      });
      const { evidence } = await on.db
        .selectFrom('ruling')
        .select('evidence')
        .where('id', '=', ruling!.id)
        .executeTakeFirstOrThrow();
      const before = JSON.parse(evidence) as { evidence: { part: string }[] };
      expect(before.evidence.map(({ part }) => part).toSorted()).toEqual([...examined].toSorted());
      await expect(sql`update ruling set verdict = 'refuse'`.execute(on.db)).rejects.toThrow(
        'append-only',
      );
    });

    test('nobody of another company decides', async () => {
      const other = await site(records);
      const outcome = await decide(other.db, other.office, content, {
        id: freshId(),
        application,
        verdict: 'grant',
        because: '',
        asks: [],
      });
      expect(codes(outcome)).toEqual(['ABSENT']);
    });
  });

  describe('incomplete evidence', () => {
    test.each(examined)('without %s nothing is granted, and it may be refused', async (missing) => {
      for (const part of examined.filter((one) => one !== missing)) {
        await shown(on, application, part, {
          examiners: part === 'real-wall' ? [ed.act.by.person] : [],
        });
      }
      const outcome = await verdict(delia, 'grant');
      expect(outcome).toEqual({
        ok: false,
        error: [{ code: 'INCOMPLETE', lack: { code: 'NOT_PASSED', part: missing } }],
      });
      expect((await waiting(on.db, on.company, content, days(0))).ready).toEqual([]);
      expect((await verdict(delia, 'refuse', { because: 'Given up.' })).ok).toBe(true);
    });

    test('a result that nobody released does not count, nor one that lapsed', async () => {
      await allShown(on, application, ed.act.by.person);
      expect(codes(await verdict(onDay(delia, 400), 'grant'))).toHaveLength(examined.length);
      await sql`update part_result set released_at = null where part = 'knowledge'`.execute(on.db);
      expect(codes(await verdict(delia, 'grant'))).toEqual(['INCOMPLETE']);
    });

    test('a check without examiner is none', async () => {
      for (const part of examined) await shown(on, application, part);
      const outcome = await verdict(delia, 'grant');
      expect(outcome.ok ? [] : outcome.error).toEqual([
        { code: 'INCOMPLETE', lack: { code: 'EXAMINERS', part: 'real-wall' } },
      ]);
    });
  });

  test('a renewal goes on from the old certificate, which says so', async () => {
    await allShown(on, application, ed.act.by.person);
    const first = await verdict(delia, 'grant');
    const late = (act: Act) => ({ by: act.by, at: '2033-01-10T09:00:00.000Z' });
    const next = await applied({ ...on, office: late(on.office) });
    for (const part of ['knowledge', 'practice-walls']) {
      await shown(on, next, part, { on: '2033-01-09' });
    }
    const renewing = {
      id: freshId(),
      application: next,
      verdict: 'grant',
      because: '',
      asks: [],
    } as const;
    const renewed = await decide(on.db, late(delia), content, renewing);
    const [before, after] = await certificates();
    expect(before).toMatchObject({
      id: first.ok && first.value.certificate,
      replaced_by: after!.id,
    });
    expect(after).toMatchObject({
      id: renewed.ok && renewed.value.certificate,
      valid_until: '2036-05-01',
      replaced_by: null,
    });
  });

  test('without the certificate that a scheme requires nothing of it is granted', async () => {
    await on.db
      .insertInto('application')
      .values({
        id: application.replace(/^./, 'f'),
        company_id: on.company,
        person_id: on.candidate.by.person,
        scheme: corners,
        made_by: on.office.by.person,
        made_at: days(0),
      })
      .execute();
    application = application.replace(/^./, 'f');
    expect(codes(await verdict(delia, 'grant'))).toContain('INCOMPLETE');
  });

  describe('an appeal', () => {
    beforeEach(async () => {
      await allShown(on, application, ed.act.by.person);
      await verdict(delia, 'refuse', { because: 'The weather log is missing.' });
    });

    test('is decided by another person, and may change a refusal into a certificate', async () => {
      expect((await appealed()).ok).toBe(true);
      const { appeals, ready } = await waiting(on.db, on.company, content, days(4));
      expect([appeals.length, ready.length]).toEqual([1, 0]);
      const changed = await onAppeal(onDay(ester, 5), 'grant');
      expect(changed.ok && changed.value.certificate).toBeTruthy();
      expect(await certificates()).toMatchObject([
        { granted_on: '2030-05-06', valid_until: '2033-05-06' },
      ]);
      expect((await rulingsOn(on.db, application)).map((one) => one.verdict)).toEqual([
        'refuse',
        'grant',
      ]);
      expect(await deeds()).toEqual(
        expect.arrayContaining([
          'appeal against decision',
          'decide on appeal',
          'grant certificate',
        ]),
      );
      expect((await waiting(on.db, on.company, content, days(6))).appeals).toEqual([]);
    });

    test('on what counted on the day of the first decision, however long it takes', async () => {
      await appealed();
      expect((await onAppeal(onDay(ester, 500), 'grant')).ok).toBe(true);
    });

    test('may let it stand, and that is the end of it', async () => {
      await appealed();
      expect((await onAppeal(onDay(ester, 5), 'refuse', 'The log shows rain.')).ok).toBe(true);
      expect(codes(await appealed(onDay(on.candidate, 6)))).toEqual(['APPEALED_BEFORE']);
      expect(codes(await onAppeal(onDay(ester, 7), 'grant'))).toEqual(['NO_APPEAL']);
    });

    test('may ask for more, which opens the application again', async () => {
      await appealed();
      expect((await onAppeal(onDay(ester, 5), 'ask-for-more')).ok).toBe(true);
      expect(await closedAt()).toBeNull();
    });

    test('not by the same decider, nor without a reason', async () => {
      await appealed();
      expect(codes(await onAppeal(onDay(delia, 5), 'grant'))).toEqual(['SAME_DECIDER']);
      expect(codes(await onAppeal(onDay(ester, 5), 'grant', ' '))).toEqual(['NO_REASON']);
      expect(codes(await onAppeal(onDay(ed.act, 5), 'grant'))).toEqual(['EXAMINED']);
    });

    test('by the candidate alone, in time, with a reason, once', async () => {
      expect(codes(await appealed(onDay(ed.act, 3)))).toEqual(['NOT_BY_CANDIDATE']);
      expect(codes(await appealed(onDay(on.candidate, 31)))).toEqual(['TOO_LATE']);
      expect(codes(await appealed(onDay(on.candidate, 3), ' '))).toEqual(['NO_REASON']);
      expect((await appealed(onDay(on.candidate, 30))).ok).toBe(true);
      expect(codes(await appealed(onDay(on.candidate, 30)))).toEqual(['APPEALED_BEFORE']);
    });

    test('sent twice it is one', async () => {
      const [{ id: ruling } = { id: '' }] = await rulingsOn(on.db, application);
      const given = { id: freshId(), ruling, because: 'It did not rain.' };
      const by = onDay(on.candidate, 3);
      await Promise.all([1, 2, 3].map(() => appeal(on.db, by, content, given)));
      expect(await appealsOn(on.db, application)).toHaveLength(1);
    });

    test('it stands on the home page of who can answer it, until somebody has', async () => {
      const waits = () => examsWaiting(on.db, on.candidate.by.company);
      expect(await waits()).toEqual([]);
      await appealed();
      const { name } = on.candidate.by;
      expect(await waits()).toEqual([{ kind: 'appeal', application, name }]);
      expect((await onAppeal(onDay(ester, 5), 'refuse', 'The log shows rain.')).ok).toBe(true);
      expect(await waits()).toEqual([]);
    });

    test('while it is open nothing else is decided', async () => {
      await sql`update application set closed_at = null where id = ${application}`.execute(on.db);
      await appealed();
      expect(codes(await verdict(ester, 'grant'))).toEqual(['UNDER_APPEAL']);
    });
  });

  test('a grant gives nothing to appeal against', async () => {
    await allShown(on, application, ed.act.by.person);
    await verdict(delia, 'grant');
    expect(codes(await appealed())).toEqual(['NOTHING_TO_APPEAL']);
  });
});
