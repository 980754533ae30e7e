import type { Db } from '../database/open-database.ts';
import type { Act } from './member.ts';

/** Whom one can name as having trained somebody: all who are more than apprentices, gone or not, by name. */
export const mayTrain = (
  db: Db,
  { by }: Act,
): Promise<readonly { readonly id: string; readonly name: string }[]> =>
  db
    .selectFrom('person')
    .select(['id', 'name'])
    .where('company_id', '=', by.company)
    .where('erased_at', 'is', null)
    .where('roles', 'not in', ['', 'apprentice'])
    .orderBy('search')
    .limit(500)
    .execute();
