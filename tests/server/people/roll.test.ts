import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { freshId } from '#server/fresh-id.ts';
import * as crews from '#server/people/crews.ts';
import { searchText } from '#server/people/folded.ts';
import type { Act } from '#server/people/member.ts';
import * as people from '#server/people/people.ts';
import * as roll from '#server/people/roll.ts';
import { plan } from '../plan.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { added, freshCompany } from './company.ts';

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let act: Act;
  beforeAll(async () => {
    records = await freshRecords(kind);
    act = await freshCompany(records.db);
  });
  afterAll(() => records.drop());

  const names = async (company: string, asked: roll.Asked) =>
    (await roll.page(records.db, company, asked)).people.map(({ name }) => name);

  test('people are found by beginnings of words, without accents or capitals, and by number', async () => {
    const { db } = records;
    const { company } = act.by;
    await added(db, act, { name: 'Ana María López', number: '17' });
    await added(db, act, { name: 'Juan Malo', number: 'A-170' });
    await added(db, act, { name: 'Per%y O_Neil'.replace('%', 'c').replace('_', '') });
    expect(await names(company, { search: 'LOP' })).toEqual(['Ana María López']);
    expect(await names(company, { search: 'lópez ana' })).toEqual(['Ana María López']);
    expect(await names(company, { search: '17' })).toEqual(['Ana María López']);
    expect(await names(company, { search: 'ma' })).toEqual(['Ana María López', 'Juan Malo']);
    expect(await names(company, { search: 'opez' })).toEqual([]);
    expect(await names(company, { search: '%' })).toEqual([]);
    expect(await names(company, { search: '_na' })).toEqual([]);
  });

  test('who has left is on a list of their own, and no other company has them', async () => {
    const { db } = records;
    const mine = await freshCompany(db);
    const gone = await added(db, mine, { name: 'Gone' });
    await people.leave(db, mine, gone);
    expect(await names(mine.by.company, {})).toEqual(['Office']);
    expect(await names(mine.by.company, { who: 'gone' })).toEqual(['Gone']);
    expect(await names((await freshCompany(db)).by.company, { search: 'gone' })).toEqual([]);
  });

  describe('of a hundred thousand', () => {
    const many = 100_000;
    let big: Act;
    let crew: string;

    beforeAll(async () => {
      const { db } = records;
      big = await freshCompany(db);
      const made = await crews.create(db, big, { name: 'Few' });
      crew = made.ok ? made.value : '';
      const block = 2000;
      await db.transaction().execute(async (trx) => {
        for (let from = 0; from < many; from += block) {
          const rows = Array.from({ length: block }, (_, index) => {
            const number = from + index;
            const name = `Person ${String.fromCharCode(97 + (number % 26))}${number % 977} Family${number % 4999}`;
            return {
              id: freshId(),
              company_id: big.by.company,
              crew_id: number % 20_000 === 0 ? crew : null,
              name,
              number: String(number),
              roles: 'apprentice',
              search: searchText(name, String(number)),
              created_at: big.at,
            };
          });
          await trx.insertInto('person').values(rows).execute();
        }
      });
      await sql`analyze`.execute(db);
    }, 120_000);

    test('the pages, turned over forwards and back, show everybody of a search once', async () => {
      const { company } = big.by;
      const search = 'family77';
      const seen: string[] = [];
      let after: string | undefined;
      let page: roll.Page;
      do {
        page = await roll.page(records.db, company, { search, after });
        seen.push(...page.people.map(({ id }) => id));
        after = page.next;
      } while (after !== undefined);
      expect(seen).toHaveLength(new Set(seen).size);
      // Families 77 and 770 to 779 have 20 or 21 people each.
      const { rows } = await sql<{ n: number }>`select count(*) as n from person
        where company_id = ${company} and name like '%Family77%'`.execute(records.db);
      expect(seen).toHaveLength(Number(rows[0]?.n));
      const back: string[] = page.people.map(({ id }) => id);
      while (page.previous !== undefined) {
        page = await roll.page(records.db, company, { search, before: page.previous });
        back.unshift(...page.people.map(({ id }) => id));
      }
      expect(back).toEqual(seen);
    });

    const planOf = (asked: roll.Asked, from?: Parameters<typeof roll.pageQuery>[3]) =>
      plan(records.db, kind, roll.pageQuery(records.db, big.by.company, asked, from).compile());

    const from = { search: 'person m', id: freshId(), isBackwards: false };

    test.each([
      ['a first page', {}, undefined, 'person_here'],
      ['a page in the middle', {}, from, 'person_here'],
      ['a page before', {}, { ...from, isBackwards: true }, 'person_here'],
      ['those in no crew', { crew: 'none' }, from, 'person_here'],
      ['those who have left', { who: 'gone' }, from, 'person_gone'],
    ] as const)('%s is read from an index in its order', async (_, asked, place, index) => {
      const way = await planOf(asked, place);
      expect(way).toContain(index);
      expect(way).not.toMatch(/temp b-tree|seq scan on person/i);
    });

    test('a word that nearly nobody has is found', async () => {
      expect(await names(big.by.company, { search: 'person 99999' })).toHaveLength(1);
    });

    test('a small crew is read by itself', async () => {
      expect(await planOf({ crew })).toContain('person_here_in_crew');
      expect((await roll.page(records.db, big.by.company, { crew })).people).toHaveLength(5);
    });
  });
});
