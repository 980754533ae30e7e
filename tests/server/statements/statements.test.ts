import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Scheme } from '#engine/exam/scheme.ts';
import { statementFaults } from '#engine/statement/statement-faults.ts';
import { schemesNow } from '#server/board/qualifications.ts';
import { freshId } from '#server/fresh-id.ts';
import type { Act } from '#server/people/member.ts';
import { most, page } from '#server/statements/statements.ts';
import { apply, certify, daysFrom } from '../board/crewed.ts';
import { added, at, freshCompany } from '../people/company.ts';
import { freshRecords, kinds, type Records } from '../records.ts';

const home = 'https://walls.example/company/x';
const scheme = 'base-of-wall-installer';

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let act: Act;
  let person: string;
  let schemes: readonly Scheme[];
  beforeAll(async () => {
    records = await freshRecords(kind);
    const { db } = records;
    act = await freshCompany(db);
    schemes = await schemesNow();
    person = await added(db, act, { name: 'Ana Oak' });
    const application = await apply(db, act, person, scheme);
    const part = (result: string, released: string | null, share: number | null) => ({
      id: freshId(),
      application_id: application,
      company_id: act.by.company,
      person_id: person,
      scheme,
      part: 'knowledge',
      on_date: '2030-04-01',
      result,
      share,
      examiners: '[]',
      agreement: null,
      detail: '{}',
      content_revision: 'r',
      made_at: at,
      released_at: released,
    });
    await db
      .insertInto('part_result')
      .values([
        part('passed', '2030-04-03T08:00:00.000Z', 0.9),
        part('failed', '2030-04-02T08:00:00.000Z', 0.4),
        part('void', '2030-04-02T08:00:00.000Z', null),
        part('passed', null, 1),
      ])
      .execute();
    await certify(db, act, { person, scheme, validUntil: daysFrom(900) });
  });
  afterAll(() => records.drop());

  const first = () => page(records.db, act.by.company, home, schemes);

  test('what was released and granted is told in its order, and each is a statement', async () => {
    const { statements, next } = await first();
    expect(statements.map(({ verb, result }) => [verb.id.split('/').at(-1), result])).toEqual([
      ['failed', { success: false, score: { scaled: 0.4 } }],
      ['passed', { success: true, score: { scaled: 0.9 } }],
      ['completed', undefined],
    ]);
    expect(next).toBeUndefined();
    for (const one of statements) {
      expect(statementFaults(JSON.parse(JSON.stringify(one)))).toEqual([]);
      expect(one.actor.account.name).toBe(person);
    }
    expect(JSON.stringify(statements)).not.toContain('Ana');
  });

  test('asked again it is the same, and another company has none of it', async () => {
    expect(await first()).toEqual(await first());
    const other = await freshCompany(records.db);
    const { statements } = await page(records.db, other.by.company, home, schemes);
    expect(statements).toEqual([]);
  });

  test('page after page gives each once', async () => {
    const { db } = records;
    const many = await freshCompany(db);
    const one = await added(db, many, { name: 'Ben Elm' });
    await db
      .insertInto('certificate')
      .values(
        Array.from({ length: most + 3 }, () => ({
          id: freshId(),
          company_id: many.by.company,
          person_id: one,
          scheme,
          ruling_id: null,
          granted_on: '2029-01-01',
          valid_until: '2031-01-01',
          state: 'in-force',
          replaced_by: null,
          made_at: at,
        })),
      )
      .execute();
    const head = await page(db, many.by.company, home, schemes);
    const tail = await page(db, many.by.company, home, schemes, head.next);
    expect([head.statements.length, tail.statements.length]).toEqual([most, 3]);
    expect(tail.next).toBeUndefined();
    const ids = [...head.statements, ...tail.statements].map(({ id }) => id);
    expect(new Set(ids).size).toBe(most + 3);
  });
});
