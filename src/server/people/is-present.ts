import type { Db } from '../database/open-database.ts';

/** Whether somebody is of the company, and has not left. */
export const isPresent = async (db: Db, company: string, person: string): Promise<boolean> =>
  (await db
    .selectFrom('person')
    .select('id')
    .where('company_id', '=', company)
    .where('id', '=', person)
    .where('left_at', 'is', null)
    .executeTakeFirst()) !== undefined;
