/** Results as an examination leaves them, of people who all had the same questions. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { fewest } from '#engine/statistics/enough.ts';
import { wilson } from '#engine/statistics/wilson.ts';
import { expectedShare } from '#engine/written/expected-share.ts';
import type { WrittenPart } from '#engine/exam/scheme.ts';
import { randomFrom, whole } from '#engine/random.ts';
import { shareRight } from '#server/exams/measured-share.ts';
import { candidateAbility } from '#server/numbers/candidate-ability.ts';
import { numbersOf, overview } from '#server/numbers/numbers.ts';
import { freshCompany, freshMember } from '../attempts/company.ts';
import { content } from '../attempts/kept.ts';
import { freshRecords, kinds, type Records } from '../records.ts';

const scheme = [...content.schemes.values()].find(({ requires }) => requires.length === 0)!;
const part = scheme.parts.find((one): one is WrittenPart => one.kind === 'written')!;
const questions = [...part.blueprint.keys()].flatMap((topic) =>
  [...content.topics.values()].find(({ id }) => id === topic)!.questions.slice(0, 2),
);

/** Ten students and ten items: core.ecu.edu/wuenschk/StatHelp/KR20.txt, which prints a KR-20 of .696. */
const ten =
  '1111110110 1011011101 1111011001 0010001000 0000010010 1110111111 1101110111 1111111101 0101111101 1101101110'.split(
    ' ',
  );

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  beforeAll(async () => {
    records = await freshRecords(kind);
  });
  afterAll(() => records.drop());

  let made = 0;

  /** One result of somebody new, or of who is given, with answers to the first questions in order. */
  async function sat(
    company: string,
    { answers = '', result = 'passed', of = part.id as string, person = '' },
  ): Promise<string> {
    made += 1;
    const id = `result-${made}`;
    const who =
      person || (await freshMember(records.db, company, { name: `Person ${made}` })).person;
    const shared = {
      company_id: company,
      person_id: who,
      scheme: scheme.id,
      part: of,
      on_date: '2030-05-01' as const,
    };
    const at = '2030-05-01T07:30:00.000Z';
    const application = `application-${made}`;
    await records.db
      .insertInto('application')
      .values({
        id: application,
        company_id: company,
        person_id: who,
        scheme: scheme.id,
        made_by: who,
        made_at: at,
      })
      .execute();
    await records.db
      .insertInto('part_result')
      .values({
        ...shared,
        id,
        application_id: application,
        result: result as 'passed',
        share: null,
        examiners: '[]',
        detail: '{}',
        content_revision: content.revision,
        made_at: at,
        released_at: at,
      })
      .execute();
    if (answers === '') return who;
    await records.db
      .insertInto('item_response')
      .values(
        [...answers].map((answer, place) => ({
          ...shared,
          sitting_id: id,
          item: questions[place]!.id,
          topic: questions[place]!.topic,
          was_answered: answer === '-' ? 0 : 1,
          is_right: answer === '1' ? 1 : 0,
        })),
      )
      .execute();
    return who;
  }

  const keyOf = (company: string) => ({ company, scheme: scheme.id, part: part.id });

  test('of a form that enough people sat, KR-20 is the published one, with its error and pass rate', async () => {
    const { company } = await freshCompany(records.db);
    // Each student four times: that changes no share and no spread.
    for (const [place, answers] of [...ten, ...ten, ...ten, ...ten].entries()) {
      await sat(company, { answers, result: place < 30 ? 'passed' : 'failed' });
    }
    // Who left one open sat the same form, and does not count for KR-20.
    await sat(company, { answers: '111111111-' });
    await sat(company, { answers: '111' });
    const { forms, sat: people } = await numbersOf(records.db, content, keyOf(company), part);
    expect(people).toBe(42);
    expect([forms.count, forms.alone, forms.lines.length]).toEqual([2, 1, 1]);
    const [line] = forms.lines;
    expect(line).toMatchObject({
      questions: 10,
      sat: 41,
      passed: { enough: true, value: { share: 31 / 41, interval: wilson(31, 41) } },
    });
    // 66 right of ten students, four times, and nine.
    expect(line!.mean).toEqual({ enough: true, value: (4 * 66 + 9) / 41 });
    if (!('reliability' in line!.verdict)) throw new Error(line!.verdict.standing);
    const { kr20, persons, errorOfMeasurement } = line!.verdict.reliability;
    expect(persons).toBe(40);
    expect(kr20).toBeCloseTo(0.696347, 6);
    // Variance 5.84 over ten students, over persons - 1 of forty.
    expect(errorOfMeasurement).toBeCloseTo(Math.sqrt(((5.84 * 40) / 39) * (1 - 0.696347)), 6);
  });

  test('of a form that few sat it says so', async () => {
    const { company } = await freshCompany(records.db);
    await sat(company, { answers: '101' });
    await sat(company, { answers: '110' });
    const { forms } = await numbersOf(records.db, content, keyOf(company), part);
    expect(forms.lines).toEqual([
      {
        questions: 3,
        sat: 2,
        mean: { enough: false, have: 2, need: fewest.proportion },
        passed: { enough: false, have: 2, need: fewest.proportion },
        verdict: { standing: 'too-few-persons', have: 2, need: fewest.reliability },
      },
    ]);
  });

  test('a scheme is passed by who passed every part at the first try, of those who sat them all', async () => {
    const { company } = await freshCompany(records.db);
    for (let place = 0; place < 24; place += 1) {
      let person = '';
      for (const [at, { id: of }] of scheme.parts.entries()) {
        // Three sat but the first part; four failed the last.
        if (place < 3 && at > 0) continue;
        const result = place >= 20 && at === scheme.parts.length - 1 ? 'failed' : 'passed';
        person = await sat(company, { of, result, person });
      }
    }
    const [line] = (await overview(records.db, content, company)).filter(
      ({ id }) => id === scheme.id,
    );
    expect(line!.whole).toEqual({
      sat: 21,
      passed: { enough: true, value: { share: 17 / 21, interval: wilson(17, 21) } },
    });
    const others = await overview(records.db, content, company);
    expect(others.find(({ id }) => id !== scheme.id)!.whole.sat).toBe(0);
  });

  test('who gets more right is more able, and what is told of it holds what they got', async () => {
    const { company } = await freshCompany(records.db);
    const random = randomFrom('abilities');
    for (let place = 0; place < 100; place += 1) {
      const able = whole(random, 2, 8);
      const answers = questions.map(() => (whole(random, 0, 9) < able ? '1' : '0')).join('');
      await sat(company, { answers });
    }
    const responses = (right: number) =>
      questions.map(({ id, topic }, place) => ({
        item: id,
        topic,
        wasAnswered: true,
        isRight: place < right,
      }));
    const key = keyOf(company);
    const found = await Promise.all(
      [2, 6, 10].map((right) => candidateAbility(records.db, content, key, part, responses(right))),
    );
    const said = found.map((one) => {
      if (!one?.enough || one.value.outcome !== 'converged') throw new Error('none');
      return one.value;
    });
    expect(said[0]!.ability).toBeLessThan(said[1]!.ability);
    expect(said[1]!.ability).toBeLessThan(said[2]!.ability);
    for (const [place, { low, high, error, answers }] of said.entries()) {
      const share = [2, 6, 10][place]! / questions.length;
      expect(answers).toBe(questions.length);
      expect(error).toBeGreaterThan(0);
      expect(error).toBeLessThan(1);
      expect(low).toBeLessThan(share);
      expect(high).toBeGreaterThan(share);
    }
    const unknown = [{ item: 'none', topic: 'none', wasAnswered: true, isRight: true }];
    expect(await candidateAbility(records.db, content, key, part, unknown)).toBeUndefined();
  });

  test('enough answers take the place of what an author expects of a question', async () => {
    const { company } = await freshCompany(records.db);
    const [one, other] = questions;
    for (let place = 0; place < fewest.proportion - 1; place += 1)
      await sat(company, { answers: '0' });
    const series = keyOf(company);
    const before = await shareRight(records.db, series);
    expect(before(one!)).toBe(expectedShare[one!.difficulty]);
    await sat(company, { answers: '1-' });
    const after = await shareRight(records.db, series);
    expect(after(one!)).toBe(1 / fewest.proportion);
    expect(after(other!)).toBe(expectedShare[other!.difficulty]);
  });
});
