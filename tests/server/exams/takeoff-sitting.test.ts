/** The take-off part: what is drawn and shown, how it is marked, and what is written of it. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { toText } from '#engine/compile/transport.ts';
import { workedSolution } from '#engine/takeoff/worked.ts';
import { invigilated } from '#server/exams/invigilated.ts';
import { ownItem, ownResult, ownSitting } from '#server/exams/own-sitting.ts';
import type { KeptPlan } from '#server/exams/plan.ts';
import { releaseSitting } from '#server/exams/release.ts';
import { setUpSitting } from '#server/exams/set-up.ts';
import { problemFor } from '#server/exams/takeoff-part.ts';
import { numbersOf } from '#server/numbers/numbers.ts';
import { partNamed } from '#server/numbers/part-numbers.ts';
import { lineOf, questionTexts } from '#server/numbers/question-lines.ts';
import { retire } from '#server/numbers/retire.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { actAt, content, examStaff, opened, scheme } from './candidate.ts';
import { answering, begun, handedIn, planIn, problemAnswer, tell, waiting } from './sittings.ts';

const part = 'quantities';
const families = [
  'sheets-straight-run',
  'seam-tape',
  'fasteners-along-wall',
  'bars-to-buy',
  'lap-sealant',
  'dew-point',
];

const instanceFor = (plan: KeptPlan, item: string) => {
  const found = problemFor(content, plan, item);
  if (found.kind !== 'same') throw new Error(found.kind);
  return found.instance;
};

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  beforeAll(async () => {
    records = await freshRecords(kind);
  });
  afterAll(() => records.drop());

  const resultOf = (id: string) =>
    records.db.selectFrom('part_result').selectAll().where('id', '=', id).executeTakeFirst();

  test('problems of every family are drawn, other numbers for everybody, in the time of the part', async () => {
    const [one, two] = [await examStaff(records.db), await examStaff(records.db)];
    const first = await planIn(records, (await waiting(records, one, part)).id);
    const second = await planIn(records, (await waiting(records, two, part)).id);
    expect(first.items.toSorted()).toEqual(families.toSorted());
    expect(first.allowed).toBe(45 * 60_000);
    const prints = [first, second].flatMap(({ problems }) => problems!.map(({ print }) => print));
    expect(new Set(prints).size).toBe(12);
  });

  test('a family that was retired is on no form; without any there is none', async () => {
    const staff = await examStaff(records.db);
    const gone = { item: 'seam-tape', because: 'The roll has another length now.' };
    expect(await retire(records.db, staff.examiner, content, gone)).toEqual({
      ok: true,
      value: true,
    });
    const { id, application } = await waiting(records, staff, part);
    const { items } = await planIn(records, id);
    expect(items.filter((item) => item.startsWith('seam-tape'))).toEqual([]);
    expect(items.length).toBe(6);
    for (const item of families) {
      await retire(records.db, staff.examiner, content, { ...gone, item });
    }
    const other = { ...(await examStaff(records.db)), company: staff.company };
    const made = await opened(records.db, {
      ...other,
      office: staff.office,
      candidate: staff.office,
    });
    const asked = { application: made, part };
    expect(application).not.toBe(made);
    expect(await setUpSitting(records.db, staff.examiner, content, asked)).toMatchObject({
      error: { code: 'NO_FORM', faults: [{ code: 'TOO_FEW', wanted: 6, there: 0 }] },
    });
  });

  test('the pages hold no answer, no slip, no working, no seed and no rounding', async () => {
    const staff = await examStaff(records.db);
    const { id, plan } = await begun(records, staff, part);
    const pages = [JSON.stringify(await ownSitting(records.db, content, staff.candidate, id))];
    for (const [index, item] of plan.items.entries()) {
      const shown = await ownItem(records.db, content, staff.candidate, { id, place: index + 1 });
      const page = toText(shown);
      pages.push(page);
      const instance = instanceFor(plan, item);
      expect(page).toContain(JSON.stringify(instance.takeoff.family.title.es));
      for (const { part: solved, slips } of instance.parts) {
        const working = workedSolution(instance, solved.id).map(({ text }) => text.en);
        const secrets = [...working, ...slips.map(({ slip }) => slip.tell.en), solved.formula.text];
        expect(secrets.filter((secret) => page.includes(JSON.stringify(secret)))).toEqual([]);
      }
    }
    const all = pages.join('\n');
    const seeds = [plan.seed, ...plan.problems!.flatMap(({ seed, print }) => [seed, print])];
    expect(seeds.filter((secret) => all.includes(secret))).toEqual([]);
    const names = ['"right"', '"slips"', '"slip"', '"worked"', '"formula"', '"round"', '"because"'];
    expect(names.filter((name) => all.includes(`${name}:`) && name !== '"round"')).toEqual([]);
  });

  test('what was typed is kept as it was typed, unit and all, and shown again on another device', async () => {
    const staff = await examStaff(records.db);
    const { id, plan } = await begun(records, staff, part);
    const right = answering(plan, { place: 1, sequence: 1 });
    const { answers } = problemAnswer(plan, plan.items[0]!);
    const typed = `  12 ft  6 1/2"  (about) `;
    const value = JSON.stringify({
      kind: 'problem',
      answers: answers.map((one) => ({ ...one, text: typed, picked: 'ft' })),
    });
    expect(await tell(records, actAt(staff.candidate, 1), id, [{ ...right, value }])).toEqual([
      'taken',
    ]);
    const again = await ownItem(records.db, content, actAt(staff.candidate, 2), { id, place: 1 });
    expect(again?.given).toBe(value);
    expect(again?.given).toContain(JSON.stringify(typed).slice(1, -1));
  });

  test('all right is passed, with the working; the statistics and the decision see it', async () => {
    const staff = await examStaff(records.db);
    const { id } = await handedIn(records, staff, 0, part);
    expect(await ownResult(records.db, staff.candidate.by, id)).toBeUndefined();
    const seen = await invigilated(records.db, content, staff.company, {
      id,
      at: actAt(staff.examiner, 15).at,
    });
    expect(seen?.marked).toMatchObject({ outcome: 'passed', share: 1 });
    const released = await releaseSitting(records, actAt(staff.examiner, 20), content, id);
    expect(released).toMatchObject({ ok: true, value: { outcome: 'passed', share: 1 } });
    const row = (await resultOf(id))!;
    expect(row).toMatchObject({ result: 'passed', share: 1, part });
    expect(JSON.parse(row.examiners)).toEqual([staff.examiner.by.person]);
    const own = await ownResult(records.db, staff.candidate.by, id);
    expect(own?.detail.kind).toBe('takeoff');
    const [line] = own?.detail.kind === 'takeoff' ? own.detail.lines : [];
    expect(line?.parts[0]).toMatchObject({ verdict: 'right' });
    expect(line?.parts[0]?.worked.length).toBeGreaterThan(1);
    const responses = await records.db
      .selectFrom('item_response')
      .select(['item', 'topic', 'was_answered', 'is_right'])
      .where('sitting_id', '=', id)
      .orderBy('item')
      .execute();
    expect(responses.map(({ item }) => item)).toEqual(families.toSorted());
    expect(responses.every((one) => one.was_answered === 1 && one.is_right === 1)).toBe(true);
    const named = partNamed(content, scheme, part)!;
    const key = { company: staff.company, scheme, part };
    const { sat, items } = await numbersOf(records.db, content, key, named.part);
    expect([sat, items.length]).toEqual([1, 6]);
    const texts = questionTexts(content);
    expect(items.map((item) => lineOf(item, texts, new Set()).ask?.en)).not.toContain(undefined);
  });

  test('a wrong first part used rightly costs that part alone, and an unread one is said', async () => {
    const staff = await examStaff(records.db);
    const { id, plan } = await begun(records, staff, part);
    const place = plan.items.indexOf('seam-tape') + 1;
    const rightRolls = problemAnswer(plan, 'seam-tape').answers[1]!.text;
    const marked = async (tape: string, rolls: string, sequence: number) => {
      const answers = [
        { part: 'tape', text: tape },
        { part: 'rolls', text: rolls },
      ];
      const value = JSON.stringify({ kind: 'problem', answers });
      const sent = { ...answering(plan, { place, sequence }), value };
      expect(await tell(records, actAt(staff.candidate, 1), id, [sent])).toEqual(['taken']);
      const at = actAt(staff.examiner, 500).at;
      const seen = await invigilated(records.db, content, staff.company, { id, at });
      const { detail } = seen!.marked!;
      return detail.kind === 'takeoff'
        ? detail.lines.find(({ item }) => item === 'seam-tape')
        : undefined;
    };
    // 9000 ft and 10 % more, from rolls of 50 ft: 198 of them.
    const followed = await marked('9000 ft', '198', 1);
    expect(followed?.stated.map(({ value }) => value.en)).toEqual(
      expect.arrayContaining(['10 %', '50\'-0"']),
    );
    expect(followed?.credit).toBe(0.5);
    expect(followed?.parts.map(({ verdict }) => verdict)).toEqual(['wrong', 'right']);
    const unfollowed = await marked('9000 ft', rightRolls, 2);
    expect(unfollowed?.parts[1]?.verdict).toBe('right');
    const wrongRolls = await marked('9000 ft', '197', 3);
    expect(wrongRolls?.credit).toBe(0);
    const unread = await marked('no idea', rightRolls, 4);
    expect(unread).toMatchObject({ credit: 0.5, parts: [{ given: 'no idea' }, {}] });
    expect(unread?.parts[0]?.unread?.en).toBeTruthy();
  });

  test('a problem that newer content makes otherwise is asked no more and counts for nobody', async () => {
    const staff = await examStaff(records.db);
    const { id, plan } = await handedIn(records, staff, 0, part);
    const other = content.takeoffs.get('seam-tape' as never)!;
    const newer = {
      ...content,
      revision: 'newer',
      takeoffs: new Map(content.takeoffs).set(other.id, {
        ...other,
        intro: { en: 'Another wall.', es: 'Otro muro.' },
      }),
    };
    expect(problemFor(newer, plan, 'seam-tape')).toEqual({ kind: 'changed' });
    const released = await releaseSitting(records, actAt(staff.examiner, 20), newer, id);
    expect(released).toMatchObject({ ok: true, value: { share: 1, detail: { possible: 5 } } });
  });
});
