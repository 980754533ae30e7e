/** What goes wrong in an examination, or is tried in one: each has its result, and nothing saved is lost. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openDatabase } from '#server/database/open-database.ts';
import { grantTime } from '#server/exams/decide-sitting.ts';
import { openLedger } from '#server/exams/happenings.ts';
import { itemKey } from '#server/exams/item-key.ts';
import { ownItem, ownSitting } from '#server/exams/own-sitting.ts';
import { releaseSitting } from '#server/exams/release.ts';
import { sittingBy } from '#server/exams/sitting-log.ts';
import { mostAtOnce, receive, toldList } from '#server/exams/told.ts';
import { freshId } from '#server/fresh-id.ts';
import type { Content } from '#engine/compile/content.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { actAt, at, content, examStaff, type Staff } from './candidate.ts';
import { answering, begun, handedIn, itemAt, tell } from './sittings.ts';

const minute = 60_000;

test('what is sent is a list, and not more than a browser keeps', () => {
  const list = (count: number) => toldList({ told: Array(count).fill({}) });
  expect(list(mostAtOnce).ok).toBe(true);
  const refused = { ok: false, error: 'NOT_TOLD' };
  expect([list(mostAtOnce + 1), toldList([]), toldList(null)]).toEqual(Array(3).fill(refused));
});

/** A part of each kind that is sat at a screen. */
const parts = ['knowledge', 'quantities', 'practice-walls'];
const cases = kinds.flatMap((kind) => parts.map((part) => [kind, part] as const));

describe.each(cases)('%s, %s', (kind, part) => {
  let records: Records;
  beforeAll(async () => {
    records = await freshRecords(kind);
  });
  afterAll(() => records.drop());

  /** Every answer in the log, as it was given. */
  const kept = async (id: string): Promise<readonly string[]> => {
    const rows = await records.db
      .selectFrom('sitting_event')
      .select('detail')
      .where('sitting_id', '=', id)
      .where('kind', '=', 'answered')
      .orderBy('place')
      .execute();
    return rows.map(
      ({ detail }) => (JSON.parse(detail) as { answer: { value: string } }).answer.value,
    );
  };
  const sitting = async (staff: Staff, id: string) =>
    (await sittingBy(records.db, staff.company, id))!.sitting;

  test('late: taken to the end of the grace, refused after it, and taken again with more time', async () => {
    const staff = await examStaff(records.db);
    const { id, plan } = await begun(records, staff, part);
    const answers = [1, 2, 3].map((place) => answering(plan, { place, sequence: place }));
    const end = plan.allowed / minute;
    const send = (one: number, minutes: number) =>
      tell(records, actAt(staff.candidate, minutes), id, [answers[one]]);
    expect(await send(0, end)).toEqual(['taken']);
    expect(await send(1, end + 1)).toEqual(['taken']);
    expect(await send(2, end + 1.001)).toEqual(['late']);
    expect(
      await ownItem(records.db, content, actAt(staff.candidate, end + 2), { id, place: 1 }),
    ).toBeUndefined();
    const grant = { kind: 'more', milliseconds: 5 * minute } as const;
    const because = 'The lights went out.';
    const granted = await grantTime(records, actAt(staff.examiner, end + 2), id, {
      grant,
      because,
    });
    expect(granted).toEqual({ ok: true, value: true });
    expect(await send(2, end + 3)).toEqual(['taken']);
    expect(await kept(id)).toEqual(answers.map(({ value }) => value));
  });

  test('double: sent twice it is acknowledged twice and kept once, also after the end', async () => {
    const staff = await examStaff(records.db);
    const { id, plan } = await begun(records, staff, part);
    const answer = answering(plan, { place: 1, sequence: 1 });
    const send = (minutes: number) => tell(records, actAt(staff.candidate, minutes), id, [answer]);
    expect(await send(1)).toEqual(['taken']);
    expect(await send(1)).toEqual(['double']);
    await tell(records, actAt(staff.candidate, 2), id, [{ kind: 'handed-in' }]);
    expect(await send(3)).toEqual(['double']);
    expect(await send(500)).toEqual(['double']);
    expect(await kept(id)).toEqual([answer.value]);
  });

  test('replayed: an id with another answer is refused, and so is a new answer after handing in', async () => {
    const staff = await examStaff(records.db);
    const { id, plan } = await begun(records, staff, part);
    const first = answering(plan, { place: 1, sequence: 1, isWrong: true });
    await tell(records, actAt(staff.candidate, 1), id, [first]);
    const changed = answering(plan, { place: 1, sequence: 2, id: first.id });
    expect(await tell(records, actAt(staff.candidate, 2), id, [changed])).toEqual([
      'id-used-before',
    ]);
    await tell(records, actAt(staff.candidate, 3), id, [{ kind: 'handed-in' }]);
    const after = answering(plan, { place: 1, sequence: 3 });
    expect(await tell(records, actAt(staff.candidate, 4), id, [after])).toEqual(['handed-in']);
    expect(await kept(id)).toEqual([first.value]);
  });

  test('an older answer that comes late by the network is kept, and the newer one counts', async () => {
    const staff = await examStaff(records.db);
    const { id, plan } = await begun(records, staff, part);
    const older = answering(plan, { place: 1, sequence: 1, isWrong: true });
    const newer = answering(plan, { place: 1, sequence: 2 });
    expect(await tell(records, actAt(staff.candidate, 1), id, [newer])).toEqual(['taken']);
    expect(await tell(records, actAt(staff.candidate, 2), id, [older])).toEqual(['older']);
    const item = await ownItem(records.db, content, actAt(staff.candidate, 3), { id, place: 1 });
    expect(item?.given).toBe(newer.value);
    expect(await kept(id)).toEqual([newer.value, older.value]);
  });

  test('foreign: a sitting of another person, of another company, or of nobody is not there', async () => {
    const [staff, other] = [await examStaff(records.db), await examStaff(records.db)];
    const { id, plan } = await begun(records, staff, part);
    const answer = answering(plan, { place: 1, sequence: 1 });
    for (const by of [staff.examiner, other.candidate]) {
      expect(await tell(records, actAt(by, 1), id, [answer])).toBeUndefined();
      expect(await ownSitting(records.db, content, by, id)).toBeUndefined();
    }
    expect(await tell(records, staff.candidate, freshId(), [answer])).toBeUndefined();
    const [taking] = await Promise.all([
      openLedger(records).add({
        sitting: id,
        company: other.company,
        person: other.candidate.by.person,
        happening: { kind: 'handed-in' },
        at,
      }),
    ]);
    expect(taking).toEqual({ ok: false, error: 'of-another-sitting' });
    expect(await kept(id)).toEqual([]);
    expect((await sitting(staff, id)).phase).toBe('open');
  });

  test('answers for another form, and what is no answer at all, are refused one by one', async () => {
    const [staff, other] = [await examStaff(records.db), await examStaff(records.db)];
    const { id, plan } = await begun(records, staff, part);
    const theirs = await begun(records, other, part);
    const sound = answering(plan, { place: 1, sequence: 1 });
    const foreign = answering(theirs.plan, { place: 1, sequence: 2 });
    const odd = { ...sound, id: freshId(), value: '{"kind":"essay"}' };
    const list = [
      foreign,
      sound,
      odd,
      { ...sound, id: 'x' },
      { ...sound, id: freshId(), sequence: 0 },
      'x',
      { kind: 'released', by: 'me' },
    ];
    expect(await tell(records, actAt(staff.candidate, 1), id, list)).toEqual([
      'not-on-this-form',
      'taken',
      'NOT_AN_ANSWER',
      'NOT_TOLD',
      'bad-sequence',
      'NOT_TOLD',
      'NOT_TOLD',
    ]);
    expect(await kept(id)).toEqual([sound.value]);
  });

  test('the clock of the device is written down and never reckoned with', async () => {
    const staff = await examStaff(records.db);
    const { id, plan } = await begun(records, staff, part);
    const early = answering(plan, { place: 1, sequence: 1, clientTime: Date.parse('1999-01-01') });
    const end = plan.allowed / minute;
    expect(await tell(records, actAt(staff.candidate, end), id, [early])).toEqual(['taken']);
    const inTime = answering(plan, { place: 2, sequence: 2, clientTime: Date.parse(at) });
    expect(await tell(records, actAt(staff.candidate, end + 5), id, [inTime])).toEqual(['late']);
  });

  test("where the server's clock is set back, the log's time stands still and gives no time", async () => {
    const staff = await examStaff(records.db);
    const { id, plan } = await begun(records, staff, part);
    const [first, second] = [1, 2].map((place) => answering(plan, { place, sequence: place }));
    await tell(records, actAt(staff.candidate, 30), id, [first]);
    expect(await tell(records, actAt(staff.candidate, -60), id, [second])).toEqual(['taken']);
    const { log } = await sitting(staff, id);
    const times = log.map((event) => event.at);
    expect(times).toEqual(times.toSorted((a, b) => a - b));
    expect(times.at(-1)).toBe(Date.parse(at) + 30 * minute);
    const end = plan.allowed / minute;
    const last = answering(plan, { place: 3, sequence: 3 });
    expect(await tell(records, actAt(staff.candidate, end + 2), id, [last])).toEqual(['late']);
  });

  test('two tabs at once: every answer is kept, and the one that came last of two alike counts', async () => {
    const staff = await examStaff(records.db);
    const { id, plan } = await begun(records, staff, part);
    const { length } = plan.items;
    const tabs = ['one', 'two'].map((tab) =>
      plan.items.map((_, index) =>
        answering(plan, { place: index + 1, sequence: index + 1, tab, isWrong: tab === 'two' }),
      ),
    );
    // Each tab, and each process, has a ledger of its own: only the records bring them in order.
    const told = await Promise.all(
      tabs.flatMap((answers) =>
        answers.map((answer) => tell(records, actAt(staff.candidate, 1), id, [answer])),
      ),
    );
    expect(told.flat()).toEqual(Array(2 * length).fill('taken'));
    const all = await kept(id);
    expect(all.toSorted()).toEqual(tabs.flatMap((tab) => tab.map(({ value }) => value)).toSorted());
    const { counts, given } = await sitting(staff, id);
    expect([given.size, counts.size]).toEqual([2 * length, length]);
    const places = await records.db
      .selectFrom('sitting_event')
      .select('place')
      .where('sitting_id', '=', id)
      .orderBy('place')
      .execute();
    expect(places.map(({ place }) => place)).toEqual(places.map((_, index) => index + 1));
  });

  test('the server stops in mid-exam: another one folds the same state and goes on', async () => {
    const staff = await examStaff(records.db);
    const { id, plan } = await begun(records, staff, part);
    const answers = [1, 2].map((place) => answering(plan, { place, sequence: place }));
    await tell(records, actAt(staff.candidate, 1), id, answers);
    const before = await sitting(staff, id);
    // Nothing in it gets to know: a second one opens the same records.
    const again = openDatabase(records.place);
    const reception = { db: again.db, ledger: openLedger(again), content };
    const known = await sittingBy(again.db, staff.company, id);
    expect(known?.sitting).toEqual(before);
    const third = answering(plan, { place: 3, sequence: 3 });
    const act = actAt(staff.candidate, 2);
    const received = await receive(reception, act, id, [answers[1], third]);
    expect(received?.receipts.map((one) => 'as' in one && one.as)).toEqual(['double', 'taken']);
    expect(received?.clock.left).toBe(plan.allowed - 2 * minute);
    await again.close();
    expect(await kept(id)).toEqual([...answers, third].map(({ value }) => value));
  });

  test('an item retired in mid-exam is asked on, its answer kept, and it counts for nobody', async () => {
    const staff = await examStaff(records.db);
    const { id, plan } = await handedIn(records, staff, 1, part);
    const { length } = plan.items;
    const last = plan.items.at(-1)!;
    await records.db
      .insertInto('retired_item')
      .values({
        company_id: staff.company,
        item: last,
        by_person_id: staff.examiner.by.person,
        because: 'Two answers are right.',
        at,
      })
      .execute();
    const released = await releaseSitting(records, actAt(staff.examiner, 20), content, id);
    expect(released).toMatchObject({
      ok: true,
      value: { share: 1, detail: { possible: length - 1 } },
    });
    if (!released.ok) throw new Error('not released');
    const line = released.value.detail.lines.find(({ item }) => item === last);
    expect(line?.leftOut).toBe('retired');
    expect((await kept(id)).length).toBe(length);
    const { log } = await sitting(staff, id);
    expect(log.filter((event) => event.kind === 'item-retired')).toMatchObject([
      { item: last, because: 'Two answers are right.' },
    ]);
    const other = await examStaff(records.db);
    const theirs = await begun(records, other, part);
    expect(theirs.plan.items.length).toBe(length);
  });

  test('an item that a newer content no longer has counts for nobody', async () => {
    const staff = await examStaff(records.db);
    const { id, plan } = await handedIn(records, staff, 0, part);
    const { length } = plan.items;
    const gone = plan.items[0]!;
    const newer: Content = {
      ...content,
      revision: 'newer',
      methods: new Map([...content.methods].filter(([method]) => method !== gone.split(':')[0])),
      takeoffs: new Map([...content.takeoffs].filter(([family]) => family !== gone)),
      topics: new Map(
        [...content.topics].map(([topic, one]) => [
          topic,
          { ...one, questions: one.questions.filter((question) => question.id !== gone) },
        ]),
      ),
    };
    const item = await ownItem(records.db, newer, staff.candidate, { id, place: 1 });
    expect(item).toBeUndefined();
    const released = await releaseSitting(records, actAt(staff.examiner, 20), newer, id);
    // All walls of a form are of one method.
    const value = plan.walls
      ? { outcome: 'nothing-to-count', detail: { possible: 0 } }
      : { share: 1, detail: { possible: length - 1 } };
    expect(released).toMatchObject({ ok: true, value });
  });

  test('leaving the page is written down and changes nothing', async () => {
    const staff = await examStaff(records.db);
    const { id, plan } = await begun(records, staff, part);
    const shown = { kind: 'page-shown', tab: 'one', key: itemKey(plan, itemAt(plan, 1)) };
    const left = { kind: 'left-page', tab: 'one' };
    const back = { kind: 'came-back', tab: 'one' };
    await tell(records, actAt(staff.candidate, 1), id, [shown, left]);
    expect(await tell(records, actAt(staff.candidate, 4), id, [back])).toEqual(['taken']);
    const { absences, phase } = await sitting(staff, id);
    expect(phase).toBe('open');
    expect(absences.map(({ from, to }) => (to ?? 0) - from)).toEqual([3 * minute]);
    const clock = (await ownSitting(records.db, content, actAt(staff.candidate, 5), id))?.clock;
    expect(clock?.left).toBe(plan.allowed - 5 * minute);
  });

  test('what happened cannot be changed or taken away by anybody', async () => {
    const staff = await examStaff(records.db);
    const { id } = await handedIn(records, staff);
    const changed = records.db
      .updateTable('sitting_event')
      .set({ detail: '{}' })
      .where('sitting_id', '=', id)
      .execute();
    await expect(changed).rejects.toThrow(/append-only/);
    const deleted = records.db.deleteFrom('sitting_event').where('sitting_id', '=', id).execute();
    await expect(deleted).rejects.toThrow(/append-only/);
  });
});
