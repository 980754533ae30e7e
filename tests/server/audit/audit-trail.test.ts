import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { append, verify } from '#server/audit/audit-trail.ts';
import { found } from '#server/companies/companies.ts';
import { freshId } from '#server/fresh-id.ts';
import { freshRecords, kinds, type Records } from '../records.ts';

const at = '2030-05-01T07:30:00.000Z';

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  beforeAll(async () => {
    records = await freshRecords(kind);
  });
  afterAll(() => records.drop());

  const companyWith = async (entries: number) => {
    const { db } = records;
    const { company, person } = await found(db, {
      name: 'Test company',
      office: 'Office',
      login: freshId(),
      at,
    });
    for (let made = 1; made < entries; made += 1) {
      await db
        .transaction()
        .execute((trx) =>
          append(
            trx,
            { company, actor: person, at },
            { action: 'make crew', subject: `crew ${made}` },
          ),
        );
    }
    return company;
  };

  /** Whoever can take the guard off a table can change it: the chain still tells. */
  const tamper = async (statement: string) => {
    const { db } = records;
    const verbs = ['update', 'delete'];
    if (kind === 'postgres') {
      await sql`alter table audit_entry disable trigger all`.execute(db);
      await sql.raw(statement).execute(db);
      await sql`alter table audit_entry enable trigger all`.execute(db);
      return;
    }
    const guards = await sql<{ sql: string }>`
      select sql from sqlite_master where type = 'trigger' and tbl_name = 'audit_entry'`.execute(
      db,
    );
    for (const verb of verbs) await sql.raw(`drop trigger audit_entry_no_${verb}`).execute(db);
    await sql.raw(statement).execute(db);
    for (const guard of guards.rows) await sql.raw(guard.sql).execute(db);
  };

  test('a trail that nobody touched is whole', async () => {
    const company = await companyWith(4);
    expect(await verify(records.db, company)).toMatchObject({ length: 4, faults: [] });
  });

  test('entries of one company made at once still form one chain', async () => {
    const company = await companyWith(1);
    const { db } = records;
    await Promise.all(
      Array.from({ length: 20 }, (_, n) =>
        db
          .transaction()
          .execute((trx) =>
            append(trx, { company, actor: null, at }, { action: 'make crew', subject: `${n}` }),
          ),
      ),
    );
    expect(await verify(db, company)).toMatchObject({ length: 21, faults: [] });
  });

  test('an entry changed is told by its place', async () => {
    const company = await companyWith(5);
    await tamper(
      `update audit_entry set subject = 'crew 9' where company_id = '${company}' and place = 3`,
    );
    const { faults } = await verify(records.db, company);
    expect(faults).toEqual([{ place: 3, what: 'Its content was changed.' }]);
  });

  test('an entry taken out is told', async () => {
    const company = await companyWith(5);
    await tamper(`delete from audit_entry where company_id = '${company}' and place = 3`);
    const { faults } = await verify(records.db, company);
    expect(faults.map(({ place }) => place)).toEqual([3, 4]);
  });

  test('a trail cut short is told by its head', async () => {
    const company = await companyWith(5);
    await tamper(`delete from audit_entry where company_id = '${company}' and place > 3`);
    const { faults } = await verify(records.db, company);
    expect(faults).toEqual([
      { place: 3, what: 'The trail ends at entry 3, and should end at entry 5.' },
    ]);
  });
});
