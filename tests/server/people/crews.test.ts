import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { verify } from '#server/audit/audit-trail.ts';
import { freshId } from '#server/fresh-id.ts';
import * as crewList from '#server/people/crew-list.ts';
import * as crews from '#server/people/crews.ts';
import type { Act } from '#server/people/member.ts';
import * as people from '#server/people/people.ts';
import * as roll from '#server/people/roll.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { added, at, deeds, freshCompany } from './company.ts';

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let act: Act;
  beforeAll(async () => {
    records = await freshRecords(kind);
  });
  beforeEach(async () => {
    act = await freshCompany(records.db);
  });
  afterAll(() => records.drop());

  const crewOf = async (name: string) => {
    const made = await crews.create(records.db, act, { name });
    if (!made.ok) throw new Error(made.error);
    return made.value;
  };

  test('a crew is made, renamed, closed and opened again, each in the audit trail', async () => {
    const { db } = records;
    const crew = await crewOf('  North   side ');
    expect(await crews.rename(db, act, crew, { name: 'South side' })).toMatchObject({ ok: true });
    expect(await crews.close(db, act, crew, null)).toMatchObject({ ok: true });
    expect(await crews.reopen(db, act, crew)).toMatchObject({ ok: true });
    expect(await crews.list(db, act.by.company)).toEqual([
      { id: crew, name: 'South side', closedAt: null, people: 0 },
    ]);
    expect(await deeds(db, act.by.company, crew)).toEqual([
      'make crew',
      'rename crew',
      'close crew',
      'reopen crew',
    ]);
    expect(await verify(db, act.by.company)).toMatchObject({ faults: [] });
  });

  test('two crews at work have different names, whatever the accents and capitals', async () => {
    const { db } = records;
    const crew = await crewOf('Peñón');
    expect(await crews.create(db, act, { name: 'PENON' })).toEqual({
      ok: false,
      error: 'NAME_TAKEN',
    });
    expect(await crews.rename(db, act, crew, { name: 'penon' })).toMatchObject({ ok: true });
    expect(await crews.create(db, act, { name: ' \u0000 ' })).toMatchObject({
      error: 'NAME_WRONG',
    });
    await crews.close(db, act, crew, null);
    await crewOf('Penon');
    expect(await crews.reopen(db, act, crew)).toMatchObject({ error: 'NAME_TAKEN' });
  });

  test('two who make a crew of one name at once do not both get it', async () => {
    const { db } = records;
    const made = await Promise.all(
      Array.from({ length: 6 }, () => crews.create(db, act, { name: 'Night' })),
    );
    expect(made.filter(({ ok }) => ok)).toHaveLength(1);
    expect(await crews.list(db, act.by.company)).toHaveLength(1);
  });

  test('whoever is in a crew that closes moves to the one that is named', async () => {
    const { db } = records;
    const [from, to] = [await crewOf('From'), await crewOf('To')];
    const person = await added(db, act, { name: 'Ana López', crew: from });
    const gone = await added(db, act, { name: 'Gone', crew: from });
    await people.leave(db, act, gone);
    expect(await crews.close(db, act, from, from)).toMatchObject({ error: 'ABSENT' });
    expect(await crews.close(db, act, from, to)).toMatchObject({ ok: true });
    expect((await roll.one(db, act.by.company, person))?.crew).toBe(to);
    expect(await people.move(db, act, person, from)).toMatchObject({ ok: false });
    await people.comeBack(db, act, gone);
    expect((await roll.one(db, act.by.company, gone))?.crew).toBeNull();
  });

  test('a crew of another company is not there', async () => {
    const { db } = records;
    const crew = await crewOf('Ours');
    const stranger = await freshCompany(db);
    for (const outcome of [
      await crews.rename(db, stranger, crew, { name: 'Theirs' }),
      await crews.close(db, stranger, crew, null),
      await crews.reopen(db, stranger, crew),
    ]) {
      expect(outcome).toEqual({ ok: false, error: 'ABSENT' });
    }
    expect(await crews.list(db, act.by.company)).toMatchObject([{ name: 'Ours', closedAt: null }]);
  });

  describe('a list of many crews', () => {
    const names = (page: crewList.CrewPage) => page.crews.map(({ name }) => name);
    const namesFor = async (asked: crewList.CrewsAsked) =>
      names(await crewList.page(records.db, act.by.company, asked));

    test('is walked page by page, forth and back, by name whatever the accents', async () => {
      const { db } = records;
      for (const name of ['delta', 'Álamo', 'Bravo', 'echo', 'Cobre']) await crewOf(name);
      await added(db, act, { name: 'Ana', crew: await crewOf('Zulu') });
      const turn = (asked: crewList.CrewsAsked) =>
        crewList.page(db, act.by.company, { ...asked, most: 2 });
      const first = await turn({});
      const second = await turn({ after: first.next });
      const third = await turn({ after: second.next });
      const back = await turn({ before: third.previous });
      expect([first, second, third, back].map(names)).toEqual([
        ['Álamo', 'Bravo'],
        ['Cobre', 'delta'],
        ['echo', 'Zulu'],
        ['Cobre', 'delta'],
      ]);
      expect([first.previous, third.next]).toEqual([undefined, undefined]);
      expect(back).toEqual(second);
      expect(third.crews.map(({ people }) => people)).toEqual([0, 1]);
      expect(await turn({ before: second.previous })).toEqual(first);
    });

    test('is searched by beginnings of words, a new name at once, closed ones apart', async () => {
      const crew = await crewOf('Muro norte');
      await crewOf('Muro sur');
      expect(await namesFor({ search: 'NOR mur' })).toEqual(['Muro norte']);
      for (const search of ['%', '_', 'm_ro', '\\', 'uro']) {
        expect(await namesFor({ search }), search).toEqual([]);
      }
      await crews.rename(records.db, act, crew, { name: 'Peñón' });
      expect(await namesFor({ search: 'penon' })).toEqual(['Peñón']);
      expect(await namesFor({ search: 'norte' })).toEqual([]);
      await crews.close(records.db, act, crew, null);
      expect(await namesFor({})).toEqual(['Muro sur']);
      expect(await namesFor({ which: 'closed' })).toEqual(['Peñón']);
    });

    test('never shows a crew of another company, nor starts from one', async () => {
      const crew = await crewOf('Ours');
      const stranger = await freshCompany(records.db);
      const page = (asked: crewList.CrewsAsked) =>
        crewList.page(records.db, stranger.by.company, asked);
      expect(await page({})).toEqual({ crews: [] });
      expect(await page({ after: crew })).toEqual({ crews: [] });
      expect(await crewList.named(records.db, stranger.by.company, [crew])).toEqual([]);
    });

    test('gives a form the first hundred, those chosen besides, and those looked for', async () => {
      const { db } = records;
      const { company } = act.by;
      const rows = Array.from({ length: crewList.choiceLength + 2 }, (_, place) => {
        const name = `Crew ${1000 + place}`;
        return {
          id: freshId(),
          company_id: company,
          name,
          folded_name: name.toLowerCase(),
          created_at: at,
        };
      });
      await db.insertInto('crew').values(rows).execute();
      const last = rows.at(-1)!;
      const few = await crewList.choices(db, company);
      expect([few.crews.length, few.isMore]).toEqual([crewList.choiceLength, true]);
      const { crews: shown } = await crewList.choices(db, company, [last.id]);
      expect(shown[0]).toEqual({ id: last.id, name: last.name });
      const looked = await crewList.found(db, company, '1100', [last.id], 10);
      expect(looked.crews.map(({ name }) => name)).toEqual(['Crew 1101', 'Crew 1100']);
      expect((await crewList.found(db, company, '', [last.id], 10)).crews).toHaveLength(11);
    });

    describe('of more crews than a form lists, a form', () => {
      const count = crewList.choiceLength + 50;
      const nameAt = (place: number) => `${place % 2 ? 'East' : 'West'} ${1000 + place}`;
      let ids: readonly string[];
      const ask = async (search: string, chosen: readonly string[] = []) => {
        let asked = 0;
        const counting = records.db.withPlugin({
          transformQuery: ({ node }) => ((asked += 1), node),
          transformResult: ({ result }) => Promise.resolve(result),
        });
        const given = new URLSearchParams({ 'crew-search': search });
        const answer = await crewList.forForm(counting, act.by.company, given, chosen);
        return { ...answer, asked };
      };
      beforeEach(async () => {
        ids = Array.from({ length: count }, () => freshId());
        const rows = ids.map((id, place) => ({
          id,
          company_id: act.by.company,
          name: nameAt(place),
          folded_name: nameAt(place).toLowerCase(),
          created_at: at,
        }));
        await records.db.insertInto('crew').values(rows).execute();
      });

      test('lists the first, says that there are more, and keeps the one chosen', async () => {
        const last = ids.at(-2)!;
        const { crews: listed, ...told } = await ask('', [last]);
        expect(listed).toHaveLength(crewList.choiceLength + 1);
        expect(listed[0]!.id).toBe(last);
        expect(told).toMatchObject({ isMore: true, search: '', found: 0, isCut: false });
      });

      test('lists those looked for, as many as can be chosen from, and says where it cut', async () => {
        const [chosen] = ids;
        const many = await ask('east', [chosen!]);
        expect(many.crews.map(({ name }) => name)).toEqual([
          nameAt(0),
          ...Array.from({ length: crewList.foundLength }, (_, place) => nameAt(2 * place + 1)),
        ]);
        expect(many).toMatchObject({ found: crewList.foundLength, isCut: true, search: 'east' });
        const one = await ask(' 1149 ');
        expect(one.crews).toEqual([{ id: ids[149], name: nameAt(149) }]);
        expect(one).toMatchObject({ found: 1, isCut: false, search: '1149' });
        expect(await ask('nobody', [chosen!])).toMatchObject({ found: 0, crews: [{ id: chosen }] });
      });

      test('lists the one chosen once where it is also found, and none that closed', async () => {
        const found = ids[149]!;
        expect((await ask('1149', [found])).crews).toHaveLength(1);
        await crews.close(records.db, act, found, null);
        expect((await ask('1149', [found])).crews).toEqual([]);
      });

      test('asks four times at most', async () => {
        const others = ids.slice(0, 60);
        for (const [search, chosen] of [
          ['', []],
          ['east', []],
          ['', others],
          ['east', others],
        ] as const) {
          const { asked } = await ask(search, chosen);
          expect(asked, search).toBeGreaterThan(0);
          expect(asked, search).toBeLessThanOrEqual(4);
        }
      });
    });

    test('shows one crew with its people, of its own company alone', async () => {
      const crew = await crewOf('Ours');
      await added(records.db, act, { name: 'Ann', crew });
      expect(await crewList.one(records.db, act.by.company, crew)).toMatchObject({
        id: crew,
        people: 1,
      });
      const stranger = await freshCompany(records.db);
      expect(await crewList.one(records.db, stranger.by.company, crew)).toBeUndefined();
    });
  });
});
