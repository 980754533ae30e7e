import { sql } from 'kysely';
import type { Db } from '../database/open-database.ts';

/**
 * Changes a company's records in a transaction that no other change made this way overlaps: what it looks
 * up first (is the name free, who else keeps the office) still holds when it writes.
 */
export const inTurn = <T>(db: Db, company: string, change: (trx: Db) => Promise<T>): Promise<T> =>
  db.transaction().execute(async (trx) => {
    // Writing nothing new still locks the row until the transaction ends.
    await trx
      .updateTable('company')
      .set({ audit_length: sql`audit_length` })
      .where('id', '=', company)
      .execute();
    return change(trx);
  });
