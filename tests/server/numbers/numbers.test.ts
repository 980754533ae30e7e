import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { isoDateFrom } from '#engine/calendar.ts';
import type { ItemEstimate } from '#engine/statistics/item-fit.ts';
import { wilson } from '#engine/statistics/wilson.ts';
import { verify } from '#server/audit/audit-trail.ts';
import { makeExams } from '#server/demo/exams.ts';
import { demoGuests } from '#server/demo/people.ts';
import { fitHere, fitted } from '#server/numbers/fit.ts';
import { answersTo, firstTries, satIn } from '#server/numbers/answers.ts';
import { numbersOf, overview } from '#server/numbers/numbers.ts';
import { partNamed } from '#server/numbers/part-numbers.ts';
import { retire, retiredIn, takeBack } from '#server/numbers/retire.ts';
import type { Act } from '#server/people/member.ts';
import { at, freshCompany, freshMember } from '../attempts/company.ts';
import { content } from '../attempts/kept.ts';
import { freshRecords, kinds, type Records } from '../records.ts';

const scheme = [...content.schemes.values()].find(({ requires }) => requires.length === 0)!;
const part = scheme.parts.find(({ kind }) => kind === 'written')!;
const today = isoDateFrom('2030-05-01');

/**
 * Mean and variance of what answers leave likely of an ability, standard normal before: by the trapezoid
 * rule over 3001 points, of plain products.
 */
function momentsOf(
  answers: readonly {
    readonly curve: ItemEstimate & { readonly estimable: true };
    readonly right: number;
  }[],
) {
  let [whole, first, second] = [0, 0, 0];
  for (let at = -7.5; at <= 7.5; at += 0.005) {
    const likely = answers.reduce(
      (product, { curve, right }) => {
        const chance = 1 / (1 + Math.exp(-(curve.slope * at + curve.intercept)));
        return product * (right === 1 ? chance : 1 - chance);
      },
      Math.exp(-(at * at) / 2),
    );
    whole += likely;
    first += likely * at;
    second += likely * at * at;
  }
  return { mean: first / whole, variance: second / whole - (first / whole) ** 2 };
}

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let act: Act;
  let key: { company: string; scheme: string; part: string };

  beforeAll(async () => {
    records = await freshRecords(kind);
    const { company, office } = await freshCompany(records.db);
    act = { by: await freshMember(records.db, company, { roles: ['examiner'] }), at };
    key = { company, scheme: scheme.id, part: part.id };
    const guests = await Promise.all(
      demoGuests('numbers', 28).map(async (person) => {
        const { person: id } = await freshMember(records.db, company, { name: person.name });
        await records.db
          .updateTable('person')
          .set({ language: person.language })
          .where('id', '=', id)
          .execute();
        return { id, crew: null, person };
      }),
    );
    if (!today.ok) throw new Error('no day');
    const staff = { offices: [office], trainers: [], examiners: [act.by.person] };
    await makeExams(records.db, { content, company, today: today.value, staff }, [], guests);
  });
  afterAll(() => records.drop());

  const count = async (result?: string) => {
    const rows = await records.db.selectFrom('part_result').select('result').execute();
    return rows.filter((row) => result === undefined || row.result === result).length;
  };

  test('a part says how many passed, with the interval of so many', async () => {
    const { sat, tries, passed, bins } = await numbersOf(records.db, content, key, part);
    expect([sat, tries]).toEqual([112, 112]);
    expect(bins.reduce((sum, one) => sum + one, 0)).toBe(112);
    const hits = await count('passed');
    expect(passed).toEqual({
      enough: true,
      value: { share: hits / 112, interval: wilson(hits, 112) },
    });
  });

  test('reliability, curves and questions follow from the answers as they are stored', async () => {
    const { precision, items } = await numbersOf(records.db, content, key, part);
    if (!precision.enough || precision.value.outcome !== 'converged') throw new Error('none');
    const { questions, offAtPassMark, cycles } = precision.value;
    expect(questions).toBe(30);
    expect(cycles).toBeGreaterThan(1);
    // The root of 30 x p (1 - p) at the pass mark is its bound.
    expect(offAtPassMark).toBeLessThan(Math.sqrt(30 * 0.75 * 0.25));
    for (const { id, verdict } of items.slice(0, 20)) {
      const own = await records.db
        .selectFrom('item_response')
        .selectAll()
        .where('item', '=', id)
        .execute();
      const answered = own.filter((row) => row.was_answered === 1);
      expect(verdict.answers).toBe(answered.length);
      if (verdict.proportion.enough) {
        const right = answered.filter((row) => row.is_right === 1).length;
        expect(verdict.proportion.value.share).toBe(right / answered.length);
      } else expect(answered.length).toBeLessThan(21);
      // Some 25 answers each: no correlation is told, and no group is compared.
      expect(verdict.difference).toMatchObject({ enough: false });
    }
  });

  test('reliability and error are what the stored answers give, reckoned by other means', async () => {
    const { precision, items } = await numbersOf(records.db, content, key, part);
    if (!precision.enough || precision.value.outcome !== 'converged') throw new Error('none');
    const curves = new Map(items.map(({ id, estimate }) => [id, estimate!]));
    const rows = await records.db.selectFrom('item_response').selectAll().execute();
    const sittings = [...Map.groupBy(rows, (row) => row.sitting_id).values()];
    const found = sittings.map((own) =>
      momentsOf(
        own.flatMap((row) => {
          const curve = curves.get(row.item)!;
          return row.was_answered === 1 && curve.estimable ? [{ curve, right: row.is_right }] : [];
        }),
      ),
    );
    const mean = found.reduce((sum, one) => sum + one.mean, 0) / found.length;
    const spread = found.reduce((sum, one) => sum + (one.mean - mean) ** 2, 0);
    const error = found.reduce((sum, one) => sum + one.variance, 0);
    expect(found.length).toBe(112);
    expect(precision.value.reliability).toBeCloseTo(spread / (spread + error), 6);
    const totals = sittings.map((own) => own.filter((row) => row.is_right === 1).length);
    const middle = totals.reduce((sum, one) => sum + one, 0) / totals.length;
    const variance = totals.reduce((sum, one) => sum + (one - middle) ** 2, 0) / 111;
    expect(precision.value.errorOfMeasurement).toBeCloseTo(
      Math.sqrt(variance * (error / (spread + error))),
      6,
    );
  });

  test('of forms that one person each sat no KR-20 is given', async () => {
    const { forms } = await numbersOf(records.db, content, key, part);
    expect(forms).toEqual({ count: 112, alone: 112, lines: [] });
  });

  test('with few people it says how many it takes', async () => {
    const lines = await overview(records.db, content, key.company);
    const others = lines.flatMap(({ id, parts }) => (id === scheme.id ? [] : parts));
    expect(others.length).toBeGreaterThan(3);
    for (const { sat, passed } of others) {
      expect(sat).toBe(0);
      expect(passed).toEqual({ enough: false, have: 0, need: 21 });
    }
  });

  test('only the first try of each person counts, and nothing void or unreleased', async () => {
    const before = await numbersOf(records.db, content, key, part);
    const row = await records.db.selectFrom('part_result').selectAll().executeTakeFirstOrThrow();
    const again = (id: string, changes: object) =>
      records.db
        .insertInto('part_result')
        .values({ ...row, id, on_date: '2030-04-30', ...changes })
        .execute();
    await again('a-later-try', {});
    await again('a-void-one', { result: 'void', person_id: act.by.person });
    await again('an-open-one', { released_at: null, person_id: act.by.person });
    const after = await numbersOf(records.db, content, key, part);
    expect([after.sat, after.tries]).toEqual([before.sat, before.tries + 1]);
    const sat = await satIn(records.db, key);
    expect(firstTries(sat).map(({ id }) => id)).not.toContain('a-later-try');
  });

  test('what is kept is the same again, and anew once another result came', async () => {
    const one = await numbersOf(records.db, content, key, part);
    expect(await numbersOf(records.db, content, key, part)).toBe(one);
    const other = await numbersOf(records.db, { revision: 'another' }, key, part);
    expect(other).not.toBe(one);
    expect(other).toEqual(one);
  });

  test('worked out beside the requests it comes to the same', async () => {
    const { responses } = await answersTo(
      records.db,
      key,
      firstTries(await satIn(records.db, key)),
    );
    const task = { responses, model: 'slope-common' } as const;
    expect(responses.persons * responses.items).toBeGreaterThan(5000);
    expect(await fitted(task)).toEqual(fitHere(task));
  });

  test('another company sees none of it', async () => {
    const { company } = await freshCompany(records.db);
    const none = await numbersOf(records.db, content, { ...key, company }, part);
    expect(none).toMatchObject({ sat: 0, items: [], precision: { enough: false, have: 0 } });
    expect(partNamed(content, scheme.id, 'none')).toBeUndefined();
  });

  test('a question is retired with a reason, once, and taken back; old answers stay', async () => {
    const { db } = records;
    const item = [...content.topics.values()][0]!.questions[0]!.id;
    const before = await sql`select * from item_response`.execute(db);
    const by = (because: string, id: string = item) =>
      retire(db, act, content, { item: id, because });
    expect(await by('  ')).toEqual({ ok: false, error: 'REASON' });
    expect(await by('x'.repeat(501))).toEqual({ ok: false, error: 'REASON' });
    expect(await by('Wrong key.', 'none')).toEqual({ ok: false, error: 'ABSENT' });
    expect(await by('Wrong key.')).toEqual({ ok: true, value: true });
    expect(await by('Again.')).toEqual({ ok: true, value: true });
    const { company } = act.by;
    expect(await retiredIn(db, company)).toMatchObject([{ item, because: 'Wrong key.', at }]);
    expect(await takeBack(db, act, item)).toEqual({ ok: true, value: true });
    expect(await takeBack(db, act, item)).toEqual({ ok: false, error: 'ABSENT' });
    expect(await retiredIn(db, company)).toEqual([]);
    const after = await sql`select * from item_response`.execute(db);
    expect(after.rows).toEqual(before.rows);
    const entries = await db
      .selectFrom('audit_entry')
      .select('action')
      .where('company_id', '=', company)
      .where('subject', '=', item)
      .orderBy('place')
      .execute();
    expect(entries.map(({ action }) => action)).toEqual(['retire question', 'take question back']);
    expect((await verify(db, company)).faults).toEqual([]);
  });
});
