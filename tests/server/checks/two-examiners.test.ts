import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { agreement } from '#server/checks/agreement.ts';
import { begin } from '#server/checks/begin.ts';
import { check } from '#server/checks/checks.ts';
import { freshId } from '#server/fresh-id.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import {
  applied,
  begun,
  bundleOf,
  content,
  corners,
  days,
  filled,
  installer,
  pointsOf,
  realCorner,
  signed,
  type Signer,
  site,
  type Site,
} from './examined.ts';

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let on: Site;
  let [ed, eva]: Signer[] = [];
  let application: string;
  beforeAll(async () => {
    records = await freshRecords(kind);
  });
  afterAll(() => records.drop());
  beforeEach(async () => {
    on = await site(records);
    [ed, eva] = [await on.signer('Ed'), await on.signer('Eva')];
    await on.db
      .insertInto('certificate')
      .values({
        id: freshId(),
        company_id: on.company,
        person_id: on.candidate.by.person,
        scheme: installer,
        granted_on: '2030-01-01',
        valid_until: '2033-01-01',
        state: 'in-force',
        public_id: freshId(),
        made_at: days(-100),
      })
      .execute();
    application = await applied(on, corners);
  });

  const result = (taking: string) =>
    on.db.selectFrom('part_result').selectAll().where('id', '=', taking).executeTakeFirst();
  const bySeverity = async (id: string, severity: string) =>
    pointsOf(await bundleOf(on, id))
      .filter((point) => point.severity === severity)
      .map((point) => point.id);

  /** Both fill in and sign; the second's wrong points come last. */
  async function both(first: readonly string[], second: readonly string[]) {
    const a = await begun(on, ed!, application, realCorner);
    const b = await begun(on, eva!, application, realCorner);
    expect((await check(on.db, on.company, b))?.taking).toBe(a);
    const one = await signed(on, ed!, { id: a, sheet: await filled(on, a, { wrong: first }) });
    expect(one).toMatchObject({ value: { taking: undefined } });
    expect(await result(a)).toBeUndefined();
    const two = await signed(on, eva!, { id: b, sheet: await filled(on, b, { wrong: second }) });
    return { taking: a, came: two.ok ? two.value.taking : two.error };
  }

  test('the part has a result once both have signed, with both and their agreement', async () => {
    const { taking, came } = await both([], []);
    expect(came).toBe('passed');
    expect(await result(taking)).toMatchObject({
      result: 'passed',
      agreement: '1',
      examiners: JSON.stringify([ed!.act.by.person, eva!.act.by.person]),
    });
  });

  test('one examiner is not both, and a third finds no place', async () => {
    const a = await begun(on, ed!, application, realCorner);
    expect(await begun(on, ed!, application, realCorner)).toBe(a);
    await begun(on, eva!, application, realCorner);
    const third = await on.signer('Ivo');
    const asked = { id: freshId(), application, part: realCorner };
    expect(await begin(on.db, third.act, content, asked)).toEqual({
      ok: false,
      error: { code: 'UNDER_WAY' },
    });
  });

  test('where they part ways neither is overruled: it counts as no try, and others watch again', async () => {
    const a = await begun(on, ed!, application, realCorner);
    const [critical] = await bySeverity(a, 'critical');
    const { taking, came } = await both([], [critical!]);
    expect(came).toBe('to-be-settled');
    expect(await result(taking)).toMatchObject({ result: 'void' });
    const again = await begun(on, ed!, application, realCorner);
    expect(again).not.toBe(a);
  });

  test('where one breaks off it ends for both', async () => {
    const a = await begun(on, ed!, application, realCorner);
    const b = await begun(on, eva!, application, realCorner);
    const broken = { id: a, sheet: {}, brokenOff: 'It began to rain.' };
    expect(await signed(on, ed!, broken)).toMatchObject({ value: { taking: 'open' } });
    const sheet = await filled(on, b);
    expect(await signed(on, eva!, { id: b, sheet })).toEqual({
      ok: false,
      error: [{ code: 'OVER' }],
    });
    expect(await result(a)).toMatchObject({ result: 'void' });
  });

  test('too few to say stands where there are too few; else kappa, by pair and over all', async () => {
    const { taking } = await both([], []);
    const none = await agreement(on.db, on.company);
    expect(none.all).toMatchObject({ checks: 1, kappa: { few: 'too-few-checks' } });
    const shown = (
      counts: readonly (readonly number[])[],
      examiners: readonly string[],
      day: string,
    ) =>
      on.db
        .insertInto('part_result')
        .values({
          id: freshId(),
          application_id: application,
          company_id: on.company,
          person_id: on.candidate.by.person,
          scheme: corners,
          part: realCorner,
          on_date: day,
          result: 'passed',
          examiners: JSON.stringify(examiners),
          agreement: '7/10',
          detail: JSON.stringify({ kind: 'hands-on', counts }),
          content_revision: 'r',
          made_at: days(0),
          released_at: days(0),
        })
        .execute();
    const [a, b] = [ed!.act.by.person, eva!.act.by.person];
    await on.db.deleteFrom('part_result').where('id', '=', taking).execute();
    // Together 20, 5, 10, 15 of 50: alike .7, by chance .5 * .6 + .5 * .4 = .5, so that kappa is .4.
    await shown(
      [
        [10, 2],
        [5, 8],
      ],
      [a, b],
      '2029-11-01',
    );
    await shown(
      [
        [5, 1],
        [2, 4],
      ],
      [a, b],
      '2030-02-01',
    );
    // The same pair the other way round: its table is turned before it is added.
    await shown(
      [
        [5, 3],
        [2, 3],
      ],
      [b, a],
      '2030-03-01',
    );
    const { all, pairs, years } = await agreement(on.db, on.company);
    expect(pairs).toHaveLength(1);
    expect(pairs[0]).toMatchObject({ checks: 3, points: 50, alike: 35 });
    expect(pairs[0]!.names.toSorted()).toEqual(['Ed', 'Eva']);
    expect(pairs[0]!.kappa).toMatchObject({ kappa: expect.closeTo(0.4, 10) as number });
    expect(all).toMatchObject({ checks: 3, points: 50 });
    expect(years.map(({ year, checks, points }) => [year, checks, points])).toEqual([
      ['2029', 1, 25],
      ['2030', 2, 25],
    ]);
    expect(years[0]).toMatchObject({ kappa: { few: 'too-few-checks' } });
  });
});
