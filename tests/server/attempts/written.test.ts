import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Content } from '#engine/compile/content.ts';
import type { KeptRun } from '#engine/written/kept-run.ts';
import { compose } from '#server/assignments/assignments.ts';
import { one } from '#server/assignments/assignment-list.ts';
import { due } from '#server/assignments/due.ts';
import { Inbox } from '#server/attempts/inbox.ts';
import { seen } from '#server/attempts/kept-attempts.ts';
import { receive } from '#server/attempts/receive.ts';
import { remark } from '#server/attempts/remark.ts';
import { writtenRun } from '#server/demo/written-answers.ts';
import { freshId } from '#server/fresh-id.ts';
import type { Act, Member } from '#server/people/member.ts';
import { draft } from '../assignments/given.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { at, freshCompany, freshMember } from './company.ts';
import { content } from './kept.ts';

const topic = [...content.topics.values()][0]!;
const questions = 6;
const piece = { kind: 'written', topic: topic.id, questions, pass: 80, count: 1 } as const;

/** Everything right, or everything left open. */
function kept(isRight: boolean, seed = '7', count = questions): KeptRun {
  const stamp = { id: freshId(), at, seed };
  const run = writtenRun(content, { topic: topic.id, questions: count }, Infinity, stamp)!;
  return isRight ? run : { ...run, answers: run.answers.map(() => null) };
}

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let act: Act;
  let by: Member;
  let inbox: Inbox;
  beforeAll(async () => {
    records = await freshRecords(kind);
    inbox = new Inbox(records);
    const { company } = await freshCompany(records.db);
    act = { by: await freshMember(records.db, company, { roles: ['trainer'] }), at };
    by = await freshMember(records.db, company);
  });
  afterAll(() => records.drop());

  const send = async (run: KeptRun, work?: string) =>
    (
      await receive({ db: records.db, inbox, content }, { by, at }, [
        { kind: 'written', kept: run, ...(work ? { work } : {}) },
      ])
    )[0]!;
  const give = async () => {
    const entered = draft({ pieces: [piece], persons: [by.person] });
    const made = await compose(records.db, act, content, entered);
    if (!made.ok) throw new Error(JSON.stringify(made.error));
    return (await one(records.db, act.by.company, made.value))!;
  };

  test('a topic is given with how many questions, and how much is to be right', async () => {
    const given = await give();
    expect(given.works).toMatchObject([
      { subject: { kind: 'written', topic: topic.id, questions }, pass: 80, count: 1 },
    ]);
    const faults = async (changes: object) => {
      const entered = draft({ pieces: [{ ...piece, ...changes }], persons: [by.person] });
      const made = await compose(records.db, act, content, entered);
      return made.ok ? [] : made.error;
    };
    expect(await faults({ questions: topic.questions.length + 1 })).toMatchObject([
      { field: 'pieces', code: 'WRONG', place: 0 },
    ]);
    expect(await faults({ pass: 101 })).toMatchObject([{ code: 'WRONG' }]);
    expect(await faults({ questions: 0 })).toMatchObject([{ code: 'WRONG' }]);
    expect(await faults({ topic: 'none' })).toMatchObject([{ code: 'UNKNOWN' }]);
  });

  test('a run is marked by its answers, kept once, and counts for the work it is for', async () => {
    const given = await give();
    const work = given.works[0]!.id;
    const miss = kept(false, '8');
    expect(await send(miss, work)).toMatchObject({ kept: 'now', score: 0, outcome: 'not right' });
    const run = kept(true);
    expect(await send(run, work)).toMatchObject({ kept: 'now', score: 100, outcome: 'right' });
    expect(await send(run, work)).toMatchObject({ kept: 'before', score: 100 });
    const list = await due(records.db, by, at);
    const found = list.assignments.flatMap(({ works }) => works).find(({ id }) => id === work);
    expect(found).toMatchObject({ tries: 2, good: 1, best: 100, passedAt: at });
    expect(await seen(records.db, by.company, run.id)).toMatchObject({
      kind: 'written',
      about: topic.id,
      kept: { seed: '7', questions: run.questions, answers: run.answers },
    });
    const standing = await records.db
      .selectFrom('standing')
      .selectAll()
      .where('person_id', '=', by.person)
      .where('kind', '=', 'written')
      .executeTakeFirstOrThrow();
    expect(standing).toMatchObject({ about: topic.id, attempts: 2, best: 100 });
    const tally = JSON.parse(standing.tally) as Record<string, unknown>;
    expect(Object.values(tally)).toEqual(run.questions.map(() => [1, 0]));
  });

  test('questions that were picked by hand, of another run or answered twice are refused', async () => {
    const run = kept(true, '9');
    const others = { ...run, id: freshId(), questions: run.questions.toReversed() };
    const few = {
      ...run,
      id: freshId(),
      revision: 'older',
      questions: run.questions.slice(0, 1),
      answers: run.answers.slice(0, 1),
    };
    const twice = { ...run, id: freshId(), questions: run.questions.map(() => run.questions[0]!) };
    const foreign = { ...run, id: freshId(), answers: [{ kind: 'choose-one', choice: 'x' }] };
    for (const bad of [others, few, twice, foreign]) {
      expect(await send(bad)).toHaveProperty('refused');
    }
    const work = (await give()).works[0]!.id;
    expect(await send(kept(true, '9', questions - 1), work)).toMatchObject({
      notCounted: 'ANOTHER_TASK',
    });
  });

  test('it is marked again after a question was mended; one that is gone leaves the old mark', async () => {
    const run = kept(true, '11');
    await send(run);
    const changed = topic.questions.find(
      ({ id, kind: what }) => run.questions.includes(id) && what === 'choose-one',
    )!;
    if (changed.kind !== 'choose-one') throw new Error('another kind');
    const turned = {
      ...changed,
      right: changed.wrong[0]!.say,
      wrong: [{ say: changed.right, because: changed.point }, ...changed.wrong.slice(1)],
    };
    const withQuestions = (revision: string, list: typeof topic.questions): Content => ({
      ...content,
      revision,
      topics: new Map([...content.topics, [topic.id, { ...topic, questions: list }]]),
    });
    const mended = withQuestions(
      'mended',
      topic.questions.map((question) => (question === changed ? turned : question)),
    );
    const report = await remark(records, mended, { at: '2030-06-01T00:00:00.000Z' });
    const change = report.changes.find(({ attempt }) => attempt === run.id);
    expect(change?.before.score).toBe(100);
    expect(change?.after.score).toBeCloseTo((100 * (questions - 1)) / questions, 0);
    const without = withQuestions(
      'without',
      topic.questions.filter((question) => question !== changed),
    );
    const gone = await remark(records, without, { at: '2030-07-01T00:00:00.000Z' });
    expect(gone.unreadable.map(({ attempt }) => attempt)).toContain(run.id);
  });
});
