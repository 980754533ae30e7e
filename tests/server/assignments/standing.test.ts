import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { compose } from '#server/assignments/assignments.ts';
import { one } from '#server/assignments/assignment-list.ts';
import type { Draft } from '#server/assignments/draft.ts';
import { due } from '#server/assignments/due.ts';
import { counts, page } from '#server/assignments/those-given.ts';
import { decide, saidOf } from '#server/attempts/decisions.ts';
import { Inbox } from '#server/attempts/inbox.ts';
import { forWorks, seen } from '#server/attempts/kept-attempts.ts';
import { receive } from '#server/attempts/receive.ts';
import { freshId } from '#server/fresh-id.ts';
import type { Act, Member } from '#server/people/member.ts';
import { at, freshCompany, freshMember } from '../attempts/company.ts';
import { content, keptProblem, keptWall } from '../attempts/kept.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { anyWall, draft, freshCrew, later } from './given.ts';

const family = [...content.takeoffs.keys()][0]!;

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let inbox: Inbox;
  let act: Act;
  let crew: string;
  beforeAll(async () => {
    records = await freshRecords(kind);
    inbox = new Inbox(records);
  });
  afterAll(() => records.drop());
  beforeEach(async () => {
    const { company } = await freshCompany(records.db);
    act = { by: await freshMember(records.db, company, { roles: ['trainer'] }), at };
    crew = await freshCrew(records.db, company);
  });

  const give = async (changes: Partial<Draft> = {}) => {
    const made = await compose(records.db, act, content, draft({ crews: [crew], ...changes }));
    if (!made.ok) throw new Error(JSON.stringify(made.error));
    return (await one(records.db, act.by.company, made.value))!;
  };
  const apprentice = (name: string) => freshMember(records.db, act.by.company, { name, crew });
  const build = async (by: Member, work: string, isRight: boolean, when = at) => {
    const kept = keptWall(isRight);
    const sent = [{ kind: 'mockup', kept, work }];
    await receive({ db: records.db, inbox, content }, { by, at: when }, sent);
    return kept.id;
  };
  const stateOf = async (given: Awaited<ReturnType<typeof give>>, person: string, when = at) =>
    (await page(records.db, act.by.company, given, { at: when })).people.find(
      (row) => row.person === person,
    );
  const decided = (attempt: string, which: 'comment' | 'again', reason = 'Prime it first.') =>
    decide(records.db, { ...act, at: later(1) }, { attempt, kind: which, reason });

  test('each is told apart: not started, started, passed, stuck, late', async () => {
    const given = await give({ tries: '4', due: later(3) });
    const work = given.works[0]!.id;
    const [idle, busy, good, stuck] = await Promise.all(
      ['Idle', 'Busy', 'Good', 'Stuck'].map(apprentice),
    );
    for (let n = 0; n < 2; n += 1) await build(busy!, work, false);
    await build(good!, work, false);
    await build(good!, work, true);
    for (let n = 0; n < 3; n += 1) await build(stuck!, work, false);
    const { people } = await page(records.db, act.by.company, given, { at });
    expect(people.map(({ name, state, tries, passed }) => [name, state, tries, passed])).toEqual([
      ['Busy', 'started', 2, 0],
      ['Good', 'passed', 2, 1],
      ['Idle', 'not started', 0, 0],
      ['Stuck', 'stuck', 3, 0],
    ]);
    expect(people.every(({ isLate }) => !isLate)).toBe(true);
    const tally = { passed: 1, stuck: 1, started: 1, 'not started': 1, 'asked again': 0, all: 4 };
    expect(await counts(records.db, act.by.company, given, at)).toEqual({ ...tally, late: 0 });
    expect(await counts(records.db, act.by.company, given, later(4))).toEqual({
      ...tally,
      late: 3,
    });
    const late = await page(records.db, act.by.company, given, { at: later(4), only: 'late' });
    expect(late.people.map(({ name }) => name)).toEqual(['Busy', 'Idle', 'Stuck']);
    expect(late.people.every(({ isLate }) => isLate)).toBe(true);
    const only = await page(records.db, act.by.company, given, { at, only: 'stuck' });
    expect(only.people.map(({ person }) => person)).toEqual([stuck!.person]);
    expect(idle!.person).not.toBe(stuck!.person);
  });

  test('who has no tries left is stuck before the third miss', async () => {
    const given = await give({ tries: '2' });
    const by = await apprentice('Ana');
    await build(by, given.works[0]!.id, false);
    expect(await stateOf(given, by.person)).toMatchObject({ state: 'started' });
    await build(by, given.works[0]!.id, false);
    expect(await stateOf(given, by.person)).toMatchObject({ state: 'stuck' });
  });

  test('a good one between the misses starts the count again', async () => {
    const given = await give({ pieces: [{ kind: 'takeoff', family, count: 3 }] });
    const by = await apprentice('Ana');
    const answer = async (isRight: boolean) => {
      const kept = keptProblem(family, '3', isRight);
      const sent = [{ kind: 'takeoff', kept, work: given.works[0]!.id }];
      await receive({ db: records.db, inbox, content }, { by, at }, sent);
    };
    for (const isRight of [false, false, true, false, false]) await answer(isRight);
    expect(await stateOf(given, by.person)).toMatchObject({ state: 'started', tries: 5 });
    await answer(false);
    expect(await stateOf(given, by.person)).toMatchObject({ state: 'stuck' });
  });

  test('it is passed when all of its works are', async () => {
    const given = await give({ pieces: [anyWall, anyWall] });
    const by = await apprentice('Ana');
    await build(by, given.works[0]!.id, true);
    expect(await stateOf(given, by.person)).toMatchObject({ state: 'started', passed: 1 });
    await build(by, given.works[1]!.id, true);
    expect(await stateOf(given, by.person)).toMatchObject({ state: 'passed', passed: 2 });
  });

  test('asked for again it is open again, with another try, as often as it is asked', async () => {
    const given = await give({ tries: '1' });
    const work = given.works[0]!.id;
    const by = await apprentice('Ana');
    let attempt = await build(by, work, true);
    for (const days of [2, 4]) {
      expect(await stateOf(given, by.person)).toMatchObject({ state: 'passed' });
      expect(await decided(attempt, 'again')).toMatchObject({ ok: true });
      expect(await stateOf(given, by.person)).toMatchObject({ state: 'asked again', passed: 0 });
      const [open] = (await due(records.db, by, later(1))).assignments;
      expect(open!.works[0]).toMatchObject({ left: 1, passedAt: null, askedAgainAt: later(1) });
      attempt = await build(by, work, true, later(days));
    }
    expect(await stateOf(given, by.person)).toMatchObject({ state: 'passed', tries: 3 });
  });

  test('what is said of an attempt reaches whoever made it, with what and by whom', async () => {
    const given = await give();
    const by = await apprentice('Ana');
    const attempt = await build(by, given.works[0]!.id, true);
    await decided(attempt, 'comment', '  Good lap.\r\nWatch the corner. ');
    await decided(attempt, 'again');
    const said = await saidOf(records.db, act.by.company, attempt);
    expect(said.map(({ reason }) => reason)).toContain('Good lap.\nWatch the corner.');
    const mine = await due(records.db, by, later(2));
    expect(mine.said).toHaveLength(2);
    expect(mine.said[0]).toMatchObject({ attempt, by: act.by.name });
    const trail = await records.db
      .selectFrom('audit_entry')
      .select(['action', 'detail'])
      .where('company_id', '=', act.by.company)
      .where('subject', '=', attempt)
      .execute();
    expect(trail.map(({ action }) => action).toSorted()).toEqual([
      'ask for attempt again',
      'comment on attempt',
    ]);
    expect(trail.every(({ detail }) => !detail.includes('Prime'))).toBe(true);
  });

  test.each([
    ['no words', { reason: ' ' }, 'EMPTY'],
    ['too many words', { reason: 'x'.repeat(2001) }, 'TOO_LONG'],
    ['an attempt that is not there', { attempt: freshId() }, 'ABSENT'],
  ])('%s: nothing is decided', async (_, changes, code) => {
    const given = await give();
    const attempt = await build(await apprentice('Ana'), given.works[0]!.id, true);
    const wanted = { attempt, kind: 'again' as const, reason: 'Again.', ...changes };
    expect(await decide(records.db, act, wanted)).toEqual({ ok: false, error: code });
    expect(await saidOf(records.db, act.by.company, attempt)).toEqual([]);
  });

  test('practice that nobody gave is commented, and not asked for again', async () => {
    const by = await apprentice('Ana');
    const kept = keptWall();
    await receive({ db: records.db, inbox, content }, { by, at }, [{ kind: 'mockup', kept }]);
    expect(await decided(kept.id, 'again')).toEqual({ ok: false, error: 'NO_WORK' });
    expect(await decided(kept.id, 'comment')).toMatchObject({ ok: true });
  });

  test('nobody of another company sees or decides on an attempt', async () => {
    const given = await give();
    const attempt = await build(await apprentice('Ana'), given.works[0]!.id, true);
    const { company } = await freshCompany(records.db);
    const stranger = await freshMember(records.db, company, { roles: ['trainer'] });
    expect(await seen(records.db, company, attempt)).toBeUndefined();
    const wanted = { attempt, kind: 'comment', reason: 'Mine.' } as const;
    expect(await decide(records.db, { by: stranger, at }, wanted)).toMatchObject({
      error: 'ABSENT',
    });
  });

  test('an attempt is seen as it was played, with its latest mark', async () => {
    const given = await give();
    const by = await apprentice('Ana');
    const attempt = await build(by, given.works[0]!.id, true);
    await records.db
      .insertInto('mark')
      .values({
        attempt_id: attempt,
        content_revision: 'later',
        sheet_revision: null,
        marked_at: later(5),
        score: 70,
        outcome: 'rework',
        detail: '{}',
      })
      .execute();
    const found = await seen(records.db, act.by.company, attempt);
    expect(found).toMatchObject({ person: by.person, kind: 'mockup', score: 70 });
    expect(found!.kept).toMatchObject({ id: attempt, mode: 'own', finished: at });
    const lines = await forWorks(records.db, act.by.company, {
      person: by.person,
      works: [given.works[0]!.id],
    });
    expect(lines.map(({ id, score }) => [id, score])).toEqual([[attempt, 70]]);
  });

  test('the list of what is due holds what is open to somebody, and nothing else', async () => {
    const by = await apprentice('Ana');
    const open = await give({ title: 'Open', tries: '3' });
    const soon = await give({ title: 'Soon', opens: later(10), due: '' });
    await give({ title: 'Far off', opens: later(40), due: '' });
    const own = await give({ title: 'Own', crews: [], persons: [by.person] });
    const other = await apprentice('Bo');
    await give({ title: 'Another’s', crews: [], persons: [other.person] });
    const done = await give({ title: 'Done' });
    await build(by, done.works[0]!.id, true);
    await build(by, open.works[0]!.id, false);
    const titles = async (when: string) =>
      (await due(records.db, by, when)).assignments.map(({ title }) => title).toSorted();
    expect(await titles(at)).toEqual(['Done', 'Open', 'Own', 'Soon']);
    expect(await titles(later(20))).toEqual(['Open', 'Own', 'Soon']);
    const listed = (await due(records.db, by, at)).assignments.find(({ id }) => id === open.id)!;
    expect(listed.works[0]).toMatchObject({ tries: 1, left: 2, passedAt: null, isStuck: false });
    expect([soon.id, own.id]).not.toContain(listed.id);
    expect(JSON.stringify(await due(records.db, by, at)).length).toBeLessThan(4000);
  });

  test('pages of people hold each once, in the order of their names', async () => {
    const given = await give();
    const named = Array.from({ length: 120 }, (_, n) => `Person ${String(n).padStart(3, '0')}`);
    for (const name of named) await apprentice(name);
    const found: string[] = [];
    let after: string | undefined;
    do {
      const asked = after === undefined ? { at } : { at, after };
      const { people, next } = await page(records.db, act.by.company, given, asked);
      expect(people.length).toBeLessThanOrEqual(50);
      found.push(...people.map(({ name }) => name));
      after = next;
    } while (after !== undefined);
    expect(found).toEqual(named);
  });

  test('who has left or moved to another crew is no longer on the list', async () => {
    const given = await give();
    const [gone, moved] = [await apprentice('Gone'), await apprentice('Moved')];
    const elsewhere = await freshCrew(records.db, act.by.company, 'South');
    const set = (person: string, change: object) =>
      records.db.updateTable('person').set(change).where('id', '=', person).execute();
    await set(gone.person, { left_at: at });
    await set(moved.person, { crew_id: elsewhere });
    expect((await page(records.db, act.by.company, given, { at })).people).toEqual([]);
  });
});
