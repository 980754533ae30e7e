import type { NameShown } from '#engine/certificate/name-shown.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { append } from '../audit/audit-trail.ts';
import { inTurn } from '../companies/in-turn.ts';
import type { Db } from '../database/open-database.ts';
import { type Act, doerOf } from '../people/member.ts';

/** What strangers may read of the name on one's own certificate; nobody chooses it for another. */
export const showName = (
  db: Db,
  act: Act,
  certificate: string,
  shown: NameShown,
): Promise<Result<true, 'ABSENT'>> =>
  inTurn(db, act.by.company, async (trx) => {
    const { numUpdatedRows } = await trx
      .updateTable('certificate')
      .set({ name_shown: shown })
      .where('company_id', '=', act.by.company)
      .where('person_id', '=', act.by.person)
      .where('id', '=', certificate)
      .executeTakeFirst();
    if (numUpdatedRows === 0n) return fault('ABSENT');
    const deed = { action: 'choose name on certificate', subject: certificate, detail: { shown } };
    await append(trx, doerOf(act), deed);
    return ok(true);
  });
