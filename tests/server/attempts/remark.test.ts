import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Content } from '#engine/compile/content.ts';
import { Inbox } from '#server/attempts/inbox.ts';
import { receive } from '#server/attempts/receive.ts';
import { remark } from '#server/attempts/remark.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { at, freshCompany, freshMember } from './company.ts';
import { content, keptProblem, keptWall } from './kept.ts';

const later = '2030-06-01T00:00:00.000Z';

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let person: string;
  beforeAll(async () => {
    records = await freshRecords(kind);
    const { company } = await freshCompany(records.db);
    const by = await freshMember(records.db, company);
    ({ person } = by);
    const family = [...content.takeoffs.keys()][0]!;
    await receive({ db: records.db, inbox: new Inbox(records), content }, { by, at }, [
      { kind: 'mockup', kept: keptWall() },
      { kind: 'mockup', kept: keptWall(false) },
      { kind: 'takeoff', kept: keptProblem(family, '3') },
    ]);
  });
  afterAll(() => records.drop());

  const standing = () =>
    records.db
      .selectFrom('standing')
      .selectAll()
      .where('person_id', '=', person)
      .orderBy('about')
      .execute();
  const marks = () => records.db.selectFrom('mark').selectAll().execute();

  /** The content of tomorrow, in which no step has to follow another. */
  const mended: Content = {
    ...content,
    revision: 'mended',
    methods: new Map(
      [...content.methods].map(([id, method]) => {
        const steps = method.steps.map((step) => ({ ...step, after: [] }));
        return [id, { ...method, steps }];
      }),
    ),
  };

  test('the same content marks nothing anew and comes to the same sums', async () => {
    const before = await standing();
    const report = await remark(records, content, { at: later });
    expect(report).toMatchObject({
      people: 1,
      attempts: 3,
      marked: 0,
      changes: [],
      unreadable: [],
    });
    expect(await standing()).toEqual(before);
    expect(await marks()).toHaveLength(3);
  });

  test('a trial says what would change and writes nothing', async () => {
    const before = await standing();
    const report = await remark(records, mended, { at: later, isTrial: true });
    expect(report.marked).toBe(3);
    expect(report.changes).toHaveLength(1);
    expect(await standing()).toEqual(before);
    expect(await marks()).toHaveLength(3);
  });

  test('mended content marks all anew, keeps the old marks, and says what changed', async () => {
    const report = await remark(records, mended, { at: later });
    expect(report.marked).toBe(3);
    const [change, ...others] = report.changes;
    expect(others).toEqual([]);
    expect(change!.after.score).toBeGreaterThan(change!.before.score);
    expect(await marks()).toHaveLength(6);
    const again = await remark(records, mended, { at: later });
    expect(again).toMatchObject({ marked: 0, changes: [] });
  });

  test('an attempt that the content no longer knows keeps its mark and is named', async () => {
    const without: Content = { ...content, revision: 'without', methods: new Map() };
    const report = await remark(records, without, { at: later });
    expect(report.unreadable).toHaveLength(2);
    expect(report.unreadable[0]!.faults[0]!.code).toBe('UNKNOWN_METHOD');
    expect(await marks()).toHaveLength(7);
  });
});
