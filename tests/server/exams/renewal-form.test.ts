import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { SchemeId } from '#engine/exam/scheme.ts';
import { renewalParts } from '#engine/exam/scheme.ts';
import { invigilated } from '#server/exams/invigilated.ts';
import { questionsOf } from '#server/exams/written-bank.ts';
import type { KeptAttempt } from '#engine/marking/kept-attempt.ts';
import { Inbox } from '#server/attempts/inbox.ts';
import { receive } from '#server/attempts/receive.ts';
import { keptWall } from '../attempts/kept.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { at, content, examStaff, hold, scheme } from './candidate.ts';
import { begun } from './sittings.ts';

const usual = renewalParts(content.schemes.get(scheme as SchemeId)!).find(
  (part) => part.kind === 'written',
)!.blueprint;

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  beforeAll(async () => (records = await freshRecords(kind)));
  afterAll(() => records.drop());

  async function formFor(built: readonly KeptAttempt[]) {
    const staff = await examStaff(records.db);
    await hold(records.db, staff, { scheme, until: '2030-08-01' });
    const attempts = built.map((kept) => ({ kind: 'mockup', kept }));
    const by = staff.candidate.by;
    const reception = { db: records.db, inbox: new Inbox(records), content };
    const receipts = await receive(reception, { by, at }, attempts);
    expect(receipts.every((receipt) => 'kept' in receipt)).toBe(true);
    const { id, plan } = await begun(records, staff);
    const asked = Map.groupBy(
      plan.items,
      (item) => questionsOf(content).get(item)!.topic as string,
    );
    const counts = new Map([...asked].map(([topic, items]) => [topic, items.length]));
    return {
      plan,
      counts,
      shown: await invigilated(records.db, content, staff.company, { id, at }),
    };
  }

  test('who showed nothing is asked the blueprint as it stands', async () => {
    const { counts, plan } = await formFor([]);
    expect([...counts].toSorted()).toEqual([...usual].toSorted());
    expect(plan.asks).toEqual(Object.fromEntries(usual));
  });

  /** All in its order and to the figure, and never waited. */
  const rushed = (): KeptAttempt => {
    const { attempt, ...kept } = keptWall();
    const steps = attempt.steps.map((step) => ({ ...step, minute: 0 }));
    return { ...kept, attempt: { ...attempt, steps } };
  };

  test('who no longer waits is asked more about waiting, in a form as long', async () => {
    const { counts, plan, shown } = await formFor([rushed(), rushed(), rushed()]);
    const waiting = 'weather-and-waiting';
    expect(plan.asks![waiting]).toBeGreaterThan(usual.get(waiting)!);
    expect(Object.fromEntries(counts)).toEqual(plan.asks);
    expect(plan.items).toHaveLength([...usual.values()].reduce((sum, count) => sum + count, 0));
    expect(shown?.asks?.map(({ count }) => count)).toEqual(Object.values(plan.asks!));
  });

  test('a first certificate is asked by its own blueprint, whatever was practised', async () => {
    const staff = await examStaff(records.db);
    const { id, plan } = await begun(records, staff);
    expect(plan.asks).toBeUndefined();
    expect(
      (await invigilated(records.db, content, staff.company, { id, at }))?.asks,
    ).toBeUndefined();
  });
});
