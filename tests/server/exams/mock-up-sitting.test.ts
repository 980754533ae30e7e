/** The mock-up part: walls that nobody announced, built without help, kept move by move, marked by the steps. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { toText } from '#engine/compile/transport.ts';
import { holds } from '#engine/method/site.ts';
import { invigilated } from '#server/exams/invigilated.ts';
import { wallFor } from '#server/exams/mock-up-part.ts';
import { ownItem, ownResult, ownSitting } from '#server/exams/own-sitting.ts';
import type { KeptPlan } from '#server/exams/plan.ts';
import { releaseSitting } from '#server/exams/release.ts';
import { numbersOf } from '#server/numbers/numbers.ts';
import { partNamed } from '#server/numbers/part-numbers.ts';
import { lineOf, questionTexts } from '#server/numbers/question-lines.ts';
import { retire } from '#server/numbers/retire.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { actAt, content, examStaff, scheme, type Staff } from './candidate.ts';
import { answering, begun, handedIn, planIn, tell, waiting, wallAnswer } from './sittings.ts';

const part = 'practice-walls';

const sequenceFor = (plan: KeptPlan, item: string) => {
  const found = wallFor(content, plan, item);
  if (found.kind !== 'same') throw new Error(found.kind);
  return found.wall.sequence;
};

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  beforeAll(async () => {
    records = await freshRecords(kind);
  });
  afterAll(() => records.drop());

  const shownWall = async (staff: Staff, id: string, place = 1, minutes = 0) => {
    const by = actAt(staff.candidate, minutes);
    const item = await ownItem(records.db, content, by, { id, place });
    if (item?.shown?.kind !== 'wall') throw new Error(item?.shown?.kind);
    return { ...item, wall: item.shown.wall };
  };

  test('two different walls are drawn that the scheme covers; a retired one never', async () => {
    const staff = await examStaff(records.db);
    const { id } = await waiting(records, staff, part);
    const { items, walls, allowed } = await planIn(records, id);
    expect([items.length, new Set(items).size, allowed]).toEqual([2, 2, 40 * 60_000]);
    const covered = content.schemes.get(scheme as never)!.covers.get('base-of-wall' as never)!;
    expect(walls!.every(({ site }) => holds(covered, site))).toBe(true);
    const other = await examStaff(records.db);
    const because = 'Its site cannot be read.';
    for (const item of items) {
      expect(await retire(records.db, other.examiner, content, { item, because })).toMatchObject({
        ok: true,
      });
    }
    const theirs = await planIn(records, (await waiting(records, other, part)).id);
    expect(theirs.items.filter((item) => items.includes(item))).toEqual([]);
  });

  test('the page holds cards and a picture: no order, no reason, no tolerance, no wait, no hint', async () => {
    const staff = await examStaff(records.db);
    const { id, plan } = await begun(records, staff, part);
    const pages = [JSON.stringify(await ownSitting(records.db, content, staff.candidate, id))];
    for (const [index, item] of plan.items.entries()) {
      const { wall, ...rest } = await shownWall(staff, id, index + 1);
      const page = toText({ ...rest, wall });
      pages.push(page);
      const { steps, constraints, method } = sequenceFor(plan, item);
      const cards = wall.cards.map((card) => card.id);
      const own = steps.map((step) => step.id as string);
      expect(own.filter((step) => !cards.includes(step))).toEqual([]);
      expect(cards.length).toBeGreaterThan(own.length);
      expect(cards.filter((card) => own.includes(card))).not.toEqual(own);
      const secrets = [
        ...constraints.map(({ because }) => because.en),
        ...method.decoys.map(({ because }) => because.en),
        ...steps.flatMap((step) => step.keyPoints.map((point) => JSON.stringify(point))),
      ];
      expect(secrets.filter((secret) => page.includes(secret))).toEqual([]);
    }
    const all = pages.join('\n');
    expect(
      [plan.seed, ...plan.walls!.map(({ print }) => print)].filter((one) => all.includes(one)),
    ).toEqual([]);
    const names = ['because', 'after', 'constraints', 'order', 'rule', 'wait', 'severity', 'score'];
    expect(names.filter((name) => all.includes(`"${name}":`))).toEqual([]);
  });

  test('every move is saved with the whole wall, and another device goes on with it', async () => {
    const staff = await examStaff(records.db);
    const { id, plan } = await begun(records, staff, part);
    const { moves } = wallAnswer(plan, plan.items[0]!);
    const saved = moves.map((_, count) => ({
      ...answering(plan, { place: 1, sequence: count + 1 }),
      value: JSON.stringify({ kind: 'wall', moves: moves.slice(0, count + 1) }),
    }));
    for (const one of saved.slice(0, 3)) {
      expect(await tell(records, actAt(staff.candidate, 1), id, [one])).toEqual(['taken']);
    }
    const empty = (await shownWall(staff, id, 2)).wall.drawing;
    const again = await shownWall(staff, id, 1, 2);
    expect(again.given).toBe(saved[2]!.value);
    expect(JSON.stringify(again.wall.drawing)).not.toBe(JSON.stringify(empty));
    // The third did not arrive, the fourth did: nothing of the third is lost.
    expect(await tell(records, actAt(staff.candidate, 3), id, [saved[4]])).toEqual(['taken']);
    expect((await shownWall(staff, id, 1, 4)).given).toBe(saved[4]!.value);
    expect(await tell(records, actAt(staff.candidate, 5), id, [saved[3]])).toEqual(['older']);
    expect((await shownWall(staff, id, 1, 6)).given).toBe(saved[4]!.value);
  });

  test('a knuckle tells wet from dry by the clock that the waits made', async () => {
    const staff = await examStaff(records.db);
    const { id, plan } = await begun(records, staff, part);
    const { moves } = wallAnswer(plan, plan.items[0]!);
    const wait = moves.findIndex((move) => 'wait' in move);
    const built = (done: readonly unknown[], sequence: number) => ({
      ...answering(plan, { place: 1, sequence }),
      value: JSON.stringify({ kind: 'wall', moves: done }),
    });
    await tell(records, actAt(staff.candidate, 1), id, [built(moves.slice(0, wait), 1)]);
    const wet = (await shownWall(staff, id)).wall.felt;
    expect(wet[0]?.feel).toMatch(/wet|dew/);
    // All of it, and a week later by its own clock.
    const week = [...moves, { wait: 7 * 24 * 60 }];
    await tell(records, actAt(staff.candidate, 2), id, [built(week, 2)]);
    const dry = (await shownWall(staff, id)).wall.felt;
    expect(dry.length).toBeGreaterThanOrEqual(wet.length);
    expect(dry.map(({ feel }) => feel)).toEqual(dry.map(() => 'dry'));
  });

  test('cards and settings that no such wall has are no answer', async () => {
    const staff = await examStaff(records.db);
    const { id, plan } = await begun(records, staff, part);
    const { moves } = wallAnswer(plan, plan.items[0]!);
    const sent = (value: unknown, sequence: number) => ({
      ...answering(plan, { place: 1, sequence }),
      value: JSON.stringify(value),
    });
    const odd = [
      { kind: 'wall', moves: [{ card: 'gold-leaf', settings: {} }] },
      { kind: 'wall', moves: [{ ...moves[0], settings: { shine: '7 in' } }] },
      { kind: 'wall', moves: [{ wait: -5 }, ...moves] },
      { kind: 'wall', moves: 'all' },
      { kind: 'wall', score: 100, outcome: 'accept' },
      { kind: 'problem', answers: [] },
    ];
    const told = odd.map((value, index) => sent(value, index + 1));
    expect(await tell(records, actAt(staff.candidate, 1), id, told)).toEqual(
      odd.map(() => 'NOT_AN_ANSWER'),
    );
  });

  test('both walls right is passed, and seen by the candidate, the statistics and the application', async () => {
    const staff = await examStaff(records.db);
    const { id, plan } = await handedIn(records, staff, 0, part);
    const released = await releaseSitting(records, actAt(staff.examiner, 20), content, id);
    expect(released).toMatchObject({ ok: true, value: { outcome: 'passed', share: 1 } });
    const own = await ownResult(records.db, staff.candidate.by, id);
    expect(own).toMatchObject({ result: 'passed', share: 1, detail: { kind: 'mock-up' } });
    expect(own?.detail.lines).toMatchObject([
      { outcome: 'accept', score: 100, punch: [], leaks: 0 },
      { outcome: 'accept', score: 100, punch: [], leaks: 0 },
    ]);
    const named = partNamed(content, scheme, part)!;
    const key = { company: staff.company, scheme, part };
    const { items } = await numbersOf(records.db, content, key, named.part);
    expect(items.map((item) => item.id).toSorted()).toEqual(plan.items.toSorted());
    const texts = questionTexts(content);
    const asks = items.map((item) => lineOf(item, texts, new Set()).ask?.en ?? '');
    expect(asks.every((ask) => ask.includes(' · '))).toBe(true);
  });

  test('one good wall does not make up for another: the worst decides, with its punch list', async () => {
    const staff = await examStaff(records.db);
    const { id } = await handedIn(records, staff, 1, part);
    const at = actAt(staff.examiner, 15).at;
    const seen = await invigilated(records.db, content, staff.company, { id, at });
    expect(seen?.marked).toMatchObject({ outcome: 'failed', detail: { earned: 1, possible: 2 } });
    expect(seen!.marked!.share).toBeLessThan(0.5);
    const { detail } = seen!.marked!;
    const [good, bad] = detail.kind === 'mock-up' ? detail.lines : [];
    expect([good?.outcome, bad?.outcome]).toEqual(['accept', 'rework']);
    expect(bad!.punch.length).toBeGreaterThan(3);
    expect(bad!.punch.every(({ kind: what }) => what === 'left-out')).toBe(true);
  });

  test('run out of time with nothing built, both walls are there to be marked', async () => {
    const staff = await examStaff(records.db);
    const { id, plan } = await begun(records, staff, part);
    const end = plan.allowed / 60_000 + 2;
    const released = await releaseSitting(records, actAt(staff.examiner, end), content, id);
    expect(released).toMatchObject({ ok: true, value: { outcome: 'failed', share: 0 } });
  });

  test('what only reads otherwise in newer content is the same wall, and another order is another', async () => {
    const staff = await examStaff(records.db);
    const { id, plan } = await handedIn(records, staff, 0, part);
    const method = content.methods.get('base-of-wall' as never)!;
    const other = (steps: typeof method.steps) => ({
      ...content,
      methods: new Map(content.methods).set(method.id, { ...method, steps }),
    });
    const reworded = other(method.steps.map((step) => ({ ...step, say: { en: 'x', es: 'x' } })));
    expect(wallFor(reworded, plan, plan.items[0]!).kind).toBe('same');
    const free = other(method.steps.map((step) => ({ ...step, after: [] })));
    expect(wallFor(free, plan, plan.items[0]!)).toEqual({ kind: 'changed' });
    const released = await releaseSitting(records, actAt(staff.examiner, 20), free, id);
    expect(released).toMatchObject({ ok: true, value: { outcome: 'nothing-to-count' } });
  });
});
