import { append, type Doer } from '../audit/audit-trail.ts';
import type { Db } from '../database/open-database.ts';
import { record } from './events.ts';

/** As it stands in the history: said by the app, so the same in every language. */
export const erasedReason = 'ERASED';

/** What becomes of the certificates of a person who is erased, in the transaction that does it. */
export async function withdrawErased(trx: Db, doer: Doer, person: string): Promise<void> {
  const theirs = trx.selectFrom('certificate').select('id').where('person_id', '=', person);
  await trx.deleteFrom('certificate_issue').where('certificate_id', 'in', theirs).execute();
  await trx.deleteFrom('calendar_feed').where('person_id', '=', person).execute();
  await trx
    .updateTable('certificate')
    .set({ name_shown: 'none' })
    .where('person_id', '=', person)
    .execute();
  const withdrawn = await trx
    .updateTable('certificate')
    .set({ state: 'withdrawn' })
    .where('person_id', '=', person)
    .where('state', '<>', 'withdrawn')
    .returning('id')
    .execute();
  for (const { id } of withdrawn) {
    await record(trx, doer, id, { kind: 'withdrawn', reason: erasedReason });
    await append(trx, doer, { action: 'withdraw certificate', subject: id });
  }
}
