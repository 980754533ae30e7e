import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { found } from '#server/companies/companies.ts';
import { migrate, missingMigrations } from '#server/database/open-database.ts';
import { secret } from '#server/database/secret.ts';
import { freshId } from '#server/fresh-id.ts';
import { freshRecords, kinds, type Records } from '../records.ts';

const at = '2030-05-01T07:30:00.000Z';

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  beforeAll(async () => {
    records = await freshRecords(kind);
  });
  afterAll(() => records.drop());

  test('every migration is taken once', async () => {
    expect(await missingMigrations(records)).toEqual([]);
    expect(await migrate(records)).toEqual([]);
  });

  test('a secret is the same for whoever asks', async () => {
    const asked = await Promise.all(Array.from({ length: 5 }, () => secret(records.db, 'a')));
    expect(new Set(asked).size).toBe(1);
    expect(await secret(records.db, 'b')).not.toBe(asked[0]);
  });

  test('what is kept for ever is neither changed nor taken away', async () => {
    const { db } = records;
    const { company, person } = await found(db, {
      name: 'Test company',
      office: 'Office',
      login: freshId(),
      at,
    });
    const attempt = freshId();
    await db
      .insertInto('attempt')
      .values({
        id: attempt,
        company_id: company,
        person_id: person,
        kind: 'mockup',
        about: 'a-method',
        played: '{}',
        finished_at: at,
        received_at: at,
        content_revision: 'r',
      })
      .execute();
    await db
      .insertInto('mark')
      .values({
        attempt_id: attempt,
        content_revision: 'r',
        marked_at: at,
        score: 90,
        outcome: 'accept',
        detail: '{}',
      })
      .execute();
    await db
      .insertInto('decision')
      .values({
        id: freshId(),
        company_id: company,
        attempt_id: attempt,
        kind: 'comment',
        reason: 'Well done.',
        decided_by: person,
        decided_at: at,
      })
      .execute();
    for (const table of ['attempt', 'mark', 'decision', 'audit_entry'] as const) {
      await expect(sql`delete from ${sql.table(table)}`.execute(db)).rejects.toThrow(/append-only/);
      const change = sql`update ${sql.table(table)} set company_id = 'x'`;
      const changeMark = sql`update mark set score = 100`;
      await expect((table === 'mark' ? changeMark : change).execute(db)).rejects.toThrow(
        /append-only/,
      );
      const kept = await db.selectFrom(table).selectAll().execute();
      expect(kept).toHaveLength(1);
    }
  });

  test('a transaction that fails leaves nothing behind', async () => {
    const { db } = records;
    const doomed = db.transaction().execute(async (trx) => {
      await trx.insertInto('secret').values({ name: 'doomed', value: 'x' }).execute();
      throw new Error('no');
    });
    await expect(doomed).rejects.toThrow('no');
    const kept = await db.selectFrom('secret').where('name', '=', 'doomed').selectAll().execute();
    expect(kept).toEqual([]);
  });
});
