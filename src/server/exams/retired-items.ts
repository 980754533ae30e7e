import type { Db } from '../database/open-database.ts';

/** What a company asks no more, by its name in the bank. */
export async function retiredItems(db: Db, company: string): Promise<ReadonlySet<string>> {
  const rows = await db
    .selectFrom('retired_item')
    .select('item')
    .where('company_id', '=', company)
    .execute();
  return new Set(rows.map(({ item }) => item));
}
