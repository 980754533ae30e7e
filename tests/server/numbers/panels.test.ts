import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { fewest } from '#engine/statistics/enough.ts';
import { moveOn, open, panelFor, panelsOf, rate } from '#server/numbers/panels.ts';
import { ratingsFrom } from '#server/numbers/ratings-form.ts';
import { retire } from '#server/numbers/retire.ts';
import type { Act } from '#server/people/member.ts';
import { at, freshCompany, freshMember } from '../attempts/company.ts';
import { content } from '../attempts/kept.ts';
import { freshRecords, kinds, type Records } from '../records.ts';

const scheme = [...content.schemes.values()].find(({ requires }) => requires.length === 0)!;
const part = scheme.parts.find(({ kind }) => kind === 'written')!;
const where = { scheme: scheme.id as string, part: part.id as string };

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let judges: readonly Act[];
  beforeAll(async () => {
    records = await freshRecords(kind);
    const { company } = await freshCompany(records.db);
    judges = await Promise.all(
      Array.from({ length: fewest.judges }, async () => ({
        by: await freshMember(records.db, company, { roles: ['examiner'] }),
        at,
      })),
    );
  });
  afterAll(() => records.drop());

  const fresh = async () => {
    const made = await open(records.db, judges[0]!, content, where);
    if (!made.ok) throw new Error(made.error);
    return made.value;
  };
  const seen = async (panel: string, by = judges[0]!) =>
    (await panelFor(records.db, content, by, panel))!;
  const all = async (panel: string, percent: number) =>
    Object.fromEntries((await seen(panel)).items.map(({ item }) => [item, percent]));

  test('a panel judges one form of the part, without what is retired', async () => {
    const { items } = await seen(await fresh());
    expect(items).toHaveLength(30);
    const gone = items[0]!.item;
    await retire(records.db, judges[0]!, content, { item: gone, because: 'Unclear.' });
    for (let turn = 0; turn < 5; turn += 1) {
      const again = await seen(await fresh());
      expect(again.items.map(({ item }) => item)).not.toContain(gone);
    }
    const { company } = judges[0]!.by;
    expect(await panelsOf(records.db, { company, ...where })).toHaveLength(6);
    const absent = await open(records.db, judges[0]!, content, { ...where, part: 'none' });
    expect(absent).toEqual({ ok: false, error: 'ABSENT' });
  });

  test('five judges of known numbers come to their mean and its error; the last handed in counts', async () => {
    const panel = await fresh();
    for (const [place, judge] of judges.entries()) {
      await rate(records.db, judge, panel, await all(panel, 10));
      const later = { ...judge, at: `2030-05-02T07:30:0${place}.000Z` };
      const done = await rate(records.db, later, panel, await all(panel, 60 + 5 * place));
      expect(done).toEqual({ ok: true, value: true });
    }
    expect((await seen(panel)).cut).toBeUndefined();
    expect((await seen(panel)).items[0]!.mean).toBeUndefined();
    await moveOn(records.db, judges[0]!, panel, 'end');
    const { cut, isClosed, judges: count } = await seen(panel);
    expect([isClosed, count]).toEqual([true, 5]);
    if (!cut?.enough) throw new Error('no cut');
    // 60, 65, 70, 75 and 80 of 100, on 30 questions: mean 70, sd 7.906.
    expect(cut.value.cut).toBeCloseTo(21, 10);
    expect(cut.value.error).toBeCloseTo((0.0790569415 * 30) / Math.sqrt(5), 6);
    const late = await rate(records.db, judges[0]!, panel, await all(panel, 50));
    expect(late).toEqual({ ok: false, error: 'CLOSED' });
    expect(await moveOn(records.db, judges[0]!, panel, 'next round')).toEqual({
      ok: false,
      error: 'CLOSED',
    });
  });

  test('with fewer it says how many it takes; a round is shown once it is over', async () => {
    const panel = await fresh();
    expect(await moveOn(records.db, judges[0]!, panel, 'end')).toEqual({
      ok: false,
      error: 'NOBODY',
    });
    await rate(records.db, judges[1]!, panel, await all(panel, 40));
    expect((await seen(panel)).items.every(({ own, mean }) => own === mean)).toBe(true);
    await moveOn(records.db, judges[0]!, panel, 'next round');
    const next = await seen(panel, judges[1]);
    expect(next).toMatchObject({ round: 2, hasRated: false, judges: 0 });
    expect(next.items[0]).toMatchObject({ own: undefined, mean: 40 });
    expect(next.cut).toEqual({ enough: false, have: 1, need: fewest.judges });
  });

  test('a number left out, beyond its bounds or of no question of the form is refused', async () => {
    const panel = await fresh();
    const whole = await all(panel, 70);
    const [first, ...rest] = Object.entries(whole);
    const bad = [Object.fromEntries(rest), { ...whole, [first![0]]: 101 }, { ...whole, other: 5 }];
    for (const ratings of bad) {
      expect(await rate(records.db, judges[0]!, panel, ratings)).toEqual({
        ok: false,
        error: 'INCOMPLETE',
      });
    }
    const form = new FormData();
    for (const [name, value] of [
      ['a', '70'],
      ['b', ' 5 '],
      ['c', '-1'],
      ['d', 'x'],
    ] as const) {
      form.set(`rating/${name}`, value);
    }
    expect(ratingsFrom(form).ratings).toEqual({ a: 70, b: 5 });
    const changed = sql`update panel_rating set round = 9`;
    await rate(records.db, judges[0]!, panel, whole);
    await expect(changed.execute(records.db)).rejects.toThrow(/append-only/);
  });

  test('another company finds no such panel', async () => {
    const panel = await fresh();
    const { company } = await freshCompany(records.db);
    const stranger = { by: await freshMember(records.db, company), at };
    expect(await panelFor(records.db, content, stranger, panel)).toBeUndefined();
    expect(await rate(records.db, stranger, panel, {})).toEqual({ ok: false, error: 'ABSENT' });
    expect(await moveOn(records.db, stranger, panel, 'end')).toEqual({
      ok: false,
      error: 'ABSENT',
    });
  });
});
