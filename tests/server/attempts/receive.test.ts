import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Inbox } from '#server/attempts/inbox.ts';
import { type Reception, receive } from '#server/attempts/receive.ts';
import { freshId } from '#server/fresh-id.ts';
import type { Member } from '#server/people/member.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { at, freshCompany, freshMember } from './company.ts';
import { content, keptProblem, keptWall } from './kept.ts';

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let reception: Reception;
  let company: string;
  beforeAll(async () => {
    records = await freshRecords(kind);
    reception = { db: records.db, inbox: new Inbox(records), content };
    ({ company } = await freshCompany(records.db));
  });
  afterAll(() => records.drop());

  const send = (by: Member, list: readonly unknown[], when = at) =>
    receive(reception, { by, at: when }, list);
  const wall = (isRight = true, work?: string) => ({
    kind: 'mockup',
    kept: keptWall(isRight),
    ...(work ? { work } : {}),
  });

  /** One wall of the first method, for one person or crew. */
  const assigned = async (
    to: { readonly person_id: string } | { readonly crew_id: string },
    { tries = null as number | null, opens_at = at, count = 1, site = {} } = {},
  ) => {
    const [assignment_id, id] = [freshId(), freshId()];
    const { db } = records;
    await db
      .insertInto('assignment')
      .values({
        id: assignment_id,
        company_id: company,
        title: 'A wall',
        made_by: freshId(),
        made_at: at,
        opens_at,
        tries,
      })
      .execute();
    await db
      .insertInto('assignment_work')
      .values({
        id,
        assignment_id,
        place: 0,
        kind: 'mockup',
        subject: JSON.stringify({ method: keptWall().attempt.method, site }),
        pass: 90,
        count,
      })
      .execute();
    await db
      .insertInto('assignment_for')
      .values({ assignment_id, ...to })
      .execute();
    return id;
  };
  const progressOf = (work: string) =>
    records.db.selectFrom('progress').selectAll().where('work_id', '=', work).executeTakeFirst();

  test('a wall is marked by its steps, whatever the browser made of it', async () => {
    const by = await freshMember(records.db, company);
    const [right, wrong] = [wall(), wall(false)];
    const receipts = await send(by, [right, wrong]);
    expect(receipts[0]).toEqual({ id: right.kept.id, kept: 'now', score: 100, outcome: 'accept' });
    expect(receipts[1]).toMatchObject({ kept: 'now', outcome: 'tear-out' });
    const marks = await records.db
      .selectFrom('mark')
      .selectAll()
      .where('attempt_id', '=', right.kept.id)
      .execute();
    expect(marks).toMatchObject([
      { score: 100, content_revision: content.revision, marked_at: at },
    ]);
    expect(marks[0]!.sheet_revision).toMatch(/^\w+$/);
    const row = await records.db
      .selectFrom('attempt')
      .selectAll()
      .where('id', '=', right.kept.id)
      .executeTakeFirstOrThrow();
    expect(JSON.parse(row.played)).not.toHaveProperty('score');
    expect(JSON.parse(row.played)).toMatchObject({ attempt: right.kept.attempt });
  });

  test('sent again, alone, in a batch or at once, it is kept once', async () => {
    const by = await freshMember(records.db, company);
    const one = wall();
    const first = await Promise.all([send(by, [one, one]), send(by, [one]), send(by, [one])]);
    const kept = first.flat().map((receipt) => 'kept' in receipt && receipt.kept);
    expect(kept.toSorted()).toEqual(['before', 'before', 'before', 'now']);
    expect(await send(by, [one])).toMatchObject([{ kept: 'before', score: 100 }]);
    const standing = await records.db
      .selectFrom('standing')
      .selectAll()
      .where('person_id', '=', by.person)
      .executeTakeFirstOrThrow();
    expect(standing).toMatchObject({ attempts: 1, best: 100, last_score: 100 });
  });

  test('nobody can take over what is another’s', async () => {
    const [by, other] = [
      await freshMember(records.db, company),
      await freshMember(records.db, company),
    ];
    const one = wall();
    await send(by, [one]);
    expect(await send(other, [one])).toEqual([{ id: one.kept.id, refused: 'NOT_YOURS' }]);
  });

  test('what is faulty is refused with its places, and the rest is kept', async () => {
    const by = await freshMember(records.db, company);
    const faulty = { kind: 'mockup', kept: { ...keptWall(), id: 'x', seed: 7 } };
    const strange = {
      ...wall(),
      kept: { ...keptWall(), attempt: { method: 'no', site: {}, steps: [] } },
    };
    const receipts = await send(by, [faulty, strange, wall(), 'nonsense']);
    expect(receipts[0]).toMatchObject({ refused: [{ path: 'kept.id' }, { path: 'kept.seed' }] });
    expect(receipts[1]).toMatchObject({ refused: [{ code: 'UNKNOWN_METHOD' }] });
    expect(receipts[2]).toMatchObject({ kept: 'now' });
    expect(receipts[3]).toMatchObject({ refused: [{ code: 'NOT_AN_ATTEMPT' }] });
  });

  test('a problem is marked by its answers', async () => {
    const by = await freshMember(records.db, company);
    const families = [...content.takeoffs.keys()];
    const right = families.map((family) => ({ kind: 'takeoff', kept: keptProblem(family, '3') }));
    const shown = { kind: 'takeoff', kept: keptProblem(families[0]!, '4', false) };
    const receipts = await send(by, [...right, shown]);
    for (const receipt of receipts.slice(0, -1)) {
      expect(receipt).toMatchObject({ kept: 'now', score: 100, outcome: 'right' });
    }
    expect(receipts.at(-1)).toMatchObject({ score: 0, outcome: 'not right' });
    const stray = {
      ...right[0]!.kept,
      id: freshId(),
      answers: [{ ...right[0]!.kept.answers[0]!, part: 'no' }],
    };
    expect(await send(by, [{ kind: 'takeoff', kept: stray }])).toMatchObject([
      { refused: [{ code: 'BAD_QUANTITY' }] },
    ]);
  });

  test('many from many at once all add up', async () => {
    const people = await Promise.all(
      Array.from({ length: 8 }, () => freshMember(records.db, company)),
    );
    const sent = people.flatMap((by) =>
      Array.from({ length: 6 }, (_, n) => ({ by, one: wall(n % 2 === 0) })),
    );
    await Promise.all(sent.map(({ by, one }) => send(by, [one])));
    const rows = await records.db
      .selectFrom('standing')
      .selectAll()
      .where(
        'person_id',
        'in',
        people.map(({ person }) => person),
      )
      .execute();
    expect(rows.map(({ attempts, best }) => [attempts, best])).toEqual(people.map(() => [6, 100]));
    for (const { tally } of rows) {
      const judged = Object.entries(JSON.parse(tally) as Record<string, [number, number]>)
        .filter(([spot]) => spot.includes('/step/'))
        .map(([, [count]]) => count);
      expect(new Set(judged)).toEqual(new Set([6]));
    }
  });

  test('work that is passed counts from the first pass', async () => {
    const by = await freshMember(records.db, company);
    const work = await assigned({ person_id: by.person });
    await send(by, [wall(false, work)]);
    expect(await progressOf(work)).toMatchObject({ tries: 1, good: 0, passed_at: null });
    const later = '2030-05-02T07:30:00.000Z';
    await send(by, [wall(true, work)], later);
    await send(by, [wall(true, work)], '2030-05-03T07:30:00.000Z');
    expect(await progressOf(work)).toMatchObject({
      tries: 3,
      good: 2,
      best: 100,
      passed_at: later,
    });
  });

  test('work that takes two good ones is passed with the second', async () => {
    const by = await freshMember(records.db, company);
    const work = await assigned({ person_id: by.person }, { count: 2 });
    await send(by, [wall(true, work)]);
    expect(await progressOf(work)).toMatchObject({ good: 1, passed_at: null });
    await send(by, [wall(true, work)]);
    expect(await progressOf(work)).toMatchObject({ good: 2, passed_at: at });
  });

  test('what does not count for the work is kept as practice, with the reason', async () => {
    const [by, other] = [
      await freshMember(records.db, company),
      await freshMember(records.db, company),
    ];
    const foreign = await assigned({ person_id: other.person });
    const early = await assigned(
      { person_id: by.person },
      { opens_at: '2030-06-01T00:00:00.000Z' },
    );
    const once = await assigned({ person_id: by.person }, { tries: 1 });
    const elsewhere = await assigned({ person_id: by.person }, { site: { backing: 'none' } });
    const helped = { kind: 'mockup', work: once, kept: { ...keptWall(), mode: 'guided' } };
    const receipts = await send(by, [
      wall(true, foreign),
      wall(true, early),
      helped,
      wall(true, once),
      wall(true, once),
      wall(true, elsewhere),
    ]);
    expect(receipts.map((receipt) => 'notCounted' in receipt && receipt.notCounted)).toEqual([
      'NOT_YOURS',
      'NOT_OPEN',
      'HELPED',
      false,
      'NO_TRIES_LEFT',
      'ANOTHER_TASK',
    ]);
    expect(receipts.every((receipt) => 'kept' in receipt && receipt.kept === 'now')).toBe(true);
    expect(await progressOf(once)).toMatchObject({ tries: 1 });
  });

  test('a crew’s work is for whoever is in it', async () => {
    const crew = freshId();
    await records.db
      .insertInto('crew')
      .values({ id: crew, company_id: company, name: 'North', created_at: at })
      .execute();
    const work = await assigned({ crew_id: crew });
    const [inside, outside] = [
      await freshMember(records.db, company, { crew }),
      await freshMember(records.db, company),
    ];
    expect(await send(inside, [wall(true, work)])).toMatchObject([{ kept: 'now' }]);
    expect(await send(outside, [wall(true, work)])).toMatchObject([{ notCounted: 'NOT_YOURS' }]);
    expect(await progressOf(work)).toMatchObject({ person_id: inside.person, tries: 1 });
  });
});
