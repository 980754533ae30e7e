import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { verify } from '#server/audit/audit-trail.ts';
import { examsWaiting } from '#server/board/attention.ts';
import { pastOf } from '#server/exams/applications.ts';
import { voidSitting } from '#server/exams/decide-sitting.ts';
import { invigilated, sittingsOf } from '#server/exams/invigilated.ts';
import { itemKey } from '#server/exams/item-key.ts';
import { ownItem, ownResult, ownSitting, ownSittings } from '#server/exams/own-sitting.ts';
import { formsDrawn } from '#server/numbers/forms-drawn.ts';
import { expectedShare } from '#engine/written/expected-share.ts';
import { releaseSitting } from '#server/exams/release.ts';
import { setUpSitting } from '#server/exams/set-up.ts';
import { enterCode, makeStartCode } from '#server/exams/start-code.ts';
import { questionsOf } from '#server/exams/written-bank.ts';
import type { SchemeId } from '#engine/exam/scheme.ts';
import { deeds } from '../people/company.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { actAt, at, content, examStaff, opened, scheme } from './candidate.ts';
import { answering, begun, handedIn, planIn, tell, waiting } from './sittings.ts';

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  beforeAll(async () => {
    records = await freshRecords(kind);
  });
  afterAll(() => records.drop());

  const resultOf = (id: string) =>
    records.db.selectFrom('part_result').selectAll().where('id', '=', id).executeTakeFirst();

  test('handed in, it stands on the home page of who can release it, until somebody has', async () => {
    const staff = await examStaff(records.db);
    const { id } = await handedIn(records, staff);
    const { name } = staff.candidate.by;
    const waits = () => examsWaiting(records.db, staff.company);
    expect(await waits()).toEqual([{ kind: 'handed-in', sitting: id, scheme, name }]);
    const released = await releaseSitting(records, actAt(staff.examiner, 11), content, id);
    expect(released.ok).toBe(true);
    expect(await waits()).toEqual([]);
  });

  test('a form is drawn to the blueprint, and counts as used', async () => {
    const staff = await examStaff(records.db);
    const { id } = await waiting(records, staff);
    const { items, allowed } = await planIn(records, id);
    const topics = Object.groupBy(items, (item) => questionsOf(content).get(item)!.topic);
    const counts = Object.fromEntries(
      Object.entries(topics).map(([topic, of]) => [topic, of?.length]),
    );
    expect(counts).toEqual({
      'base-of-wall': 8,
      'weather-and-waiting': 5,
      'water-management': 4,
      'materials-and-tools': 4,
      'faults-and-rework': 4,
      safety: 5,
    });
    expect(allowed).toBe(50 * 60_000);
    const uses = await records.db
      .selectFrom('item_use')
      .select(['item', 'forms'])
      .where('company_id', '=', staff.company)
      .execute();
    expect(uses.toSorted((a, b) => (a.item < b.item ? -1 : 1))).toEqual(
      items.toSorted().map((item) => ({ item, forms: 1 })),
    );
  });

  test('how hard a form is expected to be is kept with it; a plan of before reads without', async () => {
    const staff = await examStaff(records.db);
    const { id } = await waiting(records, staff);
    const { items, match } = await planIn(records, id);
    const shares = items.map((item) => expectedShare[questionsOf(content).get(item)!.difficulty]);
    const mean = shares.reduce((sum, share) => sum + share, 0) / shares.length;
    expect(match?.difficulty.mean).toBeCloseTo(mean, 12);
    expect(match?.isMatched).toBe(true);
    const seen = () => invigilated(records.db, content, staff.company, { id, at });
    expect((await seen())?.match).toEqual(match);
    const key = { company: staff.company, scheme, part: 'knowledge' };
    expect(await formsDrawn(records.db, key)).toEqual({
      forms: 1,
      mean: match?.difficulty.mean,
      spread: 0,
      least: match?.difficulty.mean,
      most: match?.difficulty.mean,
      unmatched: 0,
      unknown: 0,
    });
    const { match: _gone, ...before } = await planIn(records, id);
    await records.db
      .updateTable('sitting')
      .set({ plan: JSON.stringify(before) })
      .where('id', '=', id)
      .execute();
    expect(await seen()).toMatchObject({ count: 30, match: undefined });
    expect(await formsDrawn(records.db, key)).toBeUndefined();
  });

  test('the next form holds none of the questions that were on the first', async () => {
    const staff = await examStaff(records.db);
    const first = await waiting(records, staff);
    await voidSitting(records, staff.examiner, first.id, 'The room was needed.');
    const asked = { application: first.application, part: 'knowledge' };
    const second = await setUpSitting(records.db, staff.examiner, content, asked);
    if (!second.ok) throw new Error(second.error.code);
    const [before, after] = [await planIn(records, first.id), await planIn(records, second.value)];
    expect(after.items.filter((item) => before.items.includes(item))).toEqual([]);
  });

  test('nothing is shown before the code is entered, and the code is kept nowhere', async () => {
    const staff = await examStaff(records.db);
    const { id } = await waiting(records, staff);
    const { db } = records;
    expect(await ownItem(db, content, staff.candidate, { id, place: 1 })).toBeUndefined();
    const code = await makeStartCode(records, staff.examiner, id);
    if (!code.ok) throw new Error(code.error);
    expect(code.value).toMatch(/^[A-HJ-NP-Z]{3}-[A-HJ-NP-Z]{3}$/);
    const rows = await db.selectFrom('sitting').selectAll().where('id', '=', id).execute();
    const plainCode = code.value.replace('-', '');
    expect(JSON.stringify(rows)).not.toContain(plainCode);
    const entered = await enterCode(records, staff.candidate, id, ` ${plainCode.toLowerCase()} `);
    expect(entered).toEqual({ ok: true, value: true });
    const item = await ownItem(db, content, staff.candidate, { id, place: 1 });
    expect(item?.shown).toBeDefined();
    expect(await ownItem(db, content, staff.candidate, { id, place: 31 })).toBeUndefined();
    expect(await deeds(db, staff.company, id)).toEqual([
      'set up sitting',
      'make start code',
      'begin sitting',
    ]);
  });

  test('a new code takes the place of the one before, and five wrong ones have to wait', async () => {
    const staff = await examStaff(records.db);
    const { id } = await waiting(records, staff);
    const enter = (code: string, minutes = 0) =>
      enterCode(records, actAt(staff.candidate, minutes), id, code);
    const first = await makeStartCode(records, staff.examiner, id);
    const second = await makeStartCode(records, staff.examiner, id);
    if (!first.ok || !second.ok) throw new Error('no code');
    for (let tries = 0; tries < 5; tries += 1) {
      expect(await enter(first.value)).toEqual({ ok: false, error: { code: 'WRONG_CODE' } });
    }
    expect(await enter(second.value)).toMatchObject({ error: { code: 'TOO_OFTEN' } });
    expect(await enter(second.value, 6)).toEqual({ ok: true, value: true });
  });

  test('nobody sets up, codes, voids or releases a sitting of their own', async () => {
    const staff = await examStaff(records.db);
    const application = await opened(records.db, staff);
    const own = { ...staff.candidate, by: { ...staff.candidate.by, roles: ['examiner' as const] } };
    const asked = { application, part: 'knowledge' };
    expect(await setUpSitting(records.db, own, content, asked)).toMatchObject({
      error: { code: 'OWN' },
    });
    const made = await setUpSitting(records.db, staff.examiner, content, asked);
    if (!made.ok) throw new Error(made.error.code);
    const refused = { ok: false, error: 'by-the-candidate' };
    expect(await makeStartCode(records, own, made.value)).toEqual(refused);
    expect(await voidSitting(records, own, made.value, 'I like it not.')).toEqual(refused);
    expect(await releaseSitting(records, own, content, made.value)).toMatchObject({
      error: { code: 'by-the-candidate' },
    });
  });

  test('whoever trained the candidate does not release their sitting', async () => {
    const staff = await examStaff(records.db);
    const { id } = await handedIn(records, staff);
    await records.db
      .insertInto('involvement')
      .values({
        company_id: staff.company,
        candidate_id: staff.candidate.by.person,
        person_id: staff.examiner.by.person,
        role: 'trainer',
        on_date: '2029-05-02',
      })
      .execute();
    expect(await releaseSitting(records, staff.examiner, content, id)).toEqual({
      ok: false,
      error: { code: 'KEPT_OUT', why: { code: 'TRAINED', from: '2031-05-02' } },
    });
    expect(await resultOf(id)).toBeUndefined();
  });

  test('all right is passed; it is told once released, with a line for each question', async () => {
    const staff = await examStaff(records.db);
    const { id, plan } = await handedIn(records, staff);
    const past = () => pastOf(records.db, staff.candidate.by.person, { id: scheme as SchemeId });
    expect((await past()).tried).toEqual([]);
    const released = await releaseSitting(records, actAt(staff.examiner, 20), content, id);
    expect(released).toMatchObject({ ok: true, value: { outcome: 'passed', share: 1 } });
    expect((await past()).tried).toEqual([
      { part: 'knowledge', on: at.slice(0, 10), result: 'passed' },
    ]);
    const responses = await records.db
      .selectFrom('item_response')
      .select(['item', 'was_answered', 'is_right'])
      .where('sitting_id', '=', id)
      .execute();
    expect(new Set(responses.map(({ item }) => item))).toEqual(new Set(plan.items));
    expect(responses.every((one) => one.was_answered === 1 && one.is_right === 1)).toBe(true);
    const { clock } = (await ownSitting(records.db, content, staff.candidate, id))!;
    expect(clock.phase).toBe('released');
    expect((await verify(records.db, staff.company)).faults).toEqual([]);
  });

  test('too little is failed, and the part has to wait before another try', async () => {
    const staff = await examStaff(records.db);
    const { id, application } = await handedIn(records, staff, 12);
    const asked = { application, part: 'knowledge' };
    const again = (minutes: number) =>
      setUpSitting(records.db, actAt(staff.examiner, minutes), content, asked);
    expect(await again(15)).toMatchObject({ error: { code: 'UNDER_WAY' } });
    const released = await releaseSitting(records, actAt(staff.examiner, 20), content, id);
    expect(released).toMatchObject({ ok: true, value: { outcome: 'failed' } });
    expect((await resultOf(id))!.share).toBeLessThan(0.75);
    expect(await again(30)).toMatchObject({
      error: {
        code: 'NOT_NOW',
        state: { kind: 'must-wait', from: '2030-05-15', because: 'just-failed' },
      },
    });
    expect(await again(14 * 24 * 60)).toMatchObject({ ok: true });
  });

  test('what was voided counts as no try, also once it was released, and is kept', async () => {
    const staff = await examStaff(records.db);
    const { id, application } = await handedIn(records, staff, 12);
    await releaseSitting(records, actAt(staff.examiner, 20), content, id);
    const because = 'The fire alarm went off.';
    const by = actAt(staff.examiner, 25);
    expect(await voidSitting(records, by, id, ' ')).toEqual({ ok: false, error: 'no-reason' });
    expect(await voidSitting(records, by, id, because)).toEqual({ ok: true, value: true });
    expect((await resultOf(id))!.result).toBe('void');
    const asked = { application, part: 'knowledge' };
    const again = await setUpSitting(records.db, actAt(staff.examiner, 30), content, asked);
    expect(again).toMatchObject({ ok: true });
    const { count } = await records.db
      .selectFrom('sitting_event')
      .select(({ fn }) => fn.countAll().as('count'))
      .where('sitting_id', '=', id)
      .where('kind', '=', 'answered')
      .executeTakeFirstOrThrow();
    expect(Number(count)).toBe(30);
  });

  test('one that is not over is not released, and one that never began leaves no result', async () => {
    const staff = await examStaff(records.db);
    const { id } = await begun(records, staff);
    const early = await releaseSitting(records, actAt(staff.examiner, 20), content, id);
    expect(early).toEqual({ ok: false, error: { code: 'still-open' } });
    const other = await examStaff(records.db);
    const never = await waiting(records, other);
    await voidSitting(records, other.examiner, never.id, 'Ana is ill.');
    expect(await resultOf(never.id)).toBeUndefined();
  });

  test('the pages of an exam hold neither a key nor a reason', async () => {
    const staff = await examStaff(records.db);
    const { id, plan } = await begun(records, staff);
    const pages = [JSON.stringify(await ownSitting(records.db, content, staff.candidate, id))];
    for (let place = 1; place <= plan.items.length; place += 1) {
      const item = await ownItem(records.db, content, staff.candidate, { id, place });
      expect(item?.shown).toBeDefined();
      const page = written(item);
      const question = questionsOf(content).get(plan.items[place - 1]!)!;
      expect(page).toContain(JSON.stringify(question.ask.es).slice(1, 20));
      pages.push(page);
    }
    const all = pages.join('\n');
    for (const item of plan.items) {
      const question = questionsOf(content).get(item)!;
      const secrets = [question.id, plan.seed, question.point.en, ...reasonsIn(question)];
      const leaks = secrets.filter((secret) => all.includes(JSON.stringify(secret).slice(1, -1)));
      expect(leaks).toEqual([]);
    }
    // A drawing has bounds, and they have a right side.
    const bare = all.replace(/"bounds":\{[^}]*\}/g, '');
    const names = new Set([...bare.matchAll(/"([a-zA-Z]+)":/g)].map(([, name]) => name));
    const tellTale = ['right', 'because', 'reason', 'reasons', 'outcome', 'explain', 'difficulty'];
    expect(tellTale.filter((name) => names.has(name))).toEqual([]);
  });

  test('the invigilator sees how far it is, and the result before anybody; the candidate, after', async () => {
    const staff = await examStaff(records.db);
    const { id, application, plan } = await begun(records, staff);
    const { db } = records;
    const own = () => ownResult(db, staff.candidate.by, id);
    const seen = (minutes: number) =>
      invigilated(db, content, staff.company, { id, at: actAt(staff.examiner, minutes).at });
    const shown = { kind: 'page-shown', tab: 'one', key: itemKey(plan, plan.items[3]!) };
    const answer = answering(plan, { place: 1, sequence: 1 });
    await tell(records, actAt(staff.candidate, 1), id, [answer, shown]);
    expect(await seen(2)).toMatchObject({
      personName: 'Ana Apprentice',
      answered: 1,
      count: 30,
      at: 4,
      marked: undefined,
      clock: { phase: 'open', left: plan.allowed - 2 * 60_000 },
    });
    await tell(records, actAt(staff.candidate, 3), id, [{ kind: 'handed-in' }]);
    const over = await seen(4);
    expect(over?.marked?.detail.earned).toBe(1);
    // Nobody else sat it: how able that makes somebody is not told.
    expect(over?.ability).toEqual({ enough: false, have: 0, need: 100 });
    expect(await own()).toBeUndefined();
    await releaseSitting(records, actAt(staff.examiner, 20), content, id);
    expect(await own()).toMatchObject({ result: 'failed', detail: { earned: 1, possible: 30 } });
    const rows = await sittingsOf(db, staff.company, application);
    expect(rows).toMatchObject([{ id, phase: 'released', result: 'failed' }]);
    expect(await ownSittings(db, staff.candidate.by)).toMatchObject([{ id, phase: 'released' }]);
    const other = await examStaff(db);
    const asked = { id, at };
    expect(await invigilated(db, content, other.company, asked)).toBeUndefined();
    expect(await ownResult(db, staff.examiner.by, id)).toBeUndefined();
  });

  test('an answer is taken again as it was given', async () => {
    const staff = await examStaff(records.db);
    const { id, plan } = await begun(records, staff);
    const answer = answering(plan, { place: 3, sequence: 1, isWrong: true });
    expect(await tell(records, actAt(staff.candidate, 1), id, [answer])).toEqual(['taken']);
    const item = await ownItem(records.db, content, staff.candidate, { id, place: 3 });
    expect(item?.given).toBe(answer.value);
    const sitting = await ownSitting(records.db, content, staff.candidate, id);
    expect(sitting?.places.map(({ isAnswered }) => isAnswered).indexOf(true)).toBe(2);
    expect(sitting?.sequence).toBe(2);
  });
});

/** Everything in it as text. */
const written = (value: unknown): string =>
  JSON.stringify(value, (_, part: unknown) => {
    if (part instanceof Map) return [...part];
    return typeof part === 'bigint' ? String(part) : part;
  });

function reasonsIn(question: object): readonly string[] {
  return [...written(question).matchAll(/"because":\{"en":"((?:[^"\\]|\\.)*)"/g)].map(
    ([, words]) => JSON.parse(`"${words}"`) as string,
  );
}
