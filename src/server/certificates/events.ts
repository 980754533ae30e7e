import type { EventKind } from '#engine/certificate/change.ts';
import type { Db } from '../database/open-database.ts';
import { freshId } from '../fresh-id.ts';
import type { Doer } from '../audit/audit-trail.ts';

/** Writes into a certificate's history, in the transaction that changes it. */
export async function record(
  trx: Db,
  { company, actor, at }: Doer,
  certificate: string,
  event: { readonly kind: EventKind; readonly reason: string },
): Promise<void> {
  await trx
    .insertInto('certificate_event')
    .values({
      id: freshId(),
      company_id: company,
      certificate_id: certificate,
      kind: event.kind,
      by_person_id: actor,
      reason: event.reason,
      at,
    })
    .execute();
}
