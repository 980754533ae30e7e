/** What happens to a certificate after it is granted: each with its reason, in one transaction, audited. */
import { changed, type Change, type ChangeFault, eventOf } from '#engine/certificate/change.ts';
import { isStanding } from '#engine/certificate/state.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { append } from '../audit/audit-trail.ts';
import { inTurn } from '../companies/in-turn.ts';
import type { Db } from '../database/open-database.ts';
import { type Act, doerOf } from '../people/member.ts';
import { record } from './events.ts';
import { addIssue, lastIssue } from './issues.ts';

/** `ABSENT`: no such certificate in the company. `OWN`: nobody changes their own. */
export type LifeFault = ChangeFault | 'ABSENT' | 'OWN';

/** `id` is made where the change is asked for, so that sending it twice changes nothing. */
export type Asked = { readonly id: string; readonly change: Change; readonly reason: string };

const deeds = {
  suspend: 'suspend certificate',
  lift: 'lift suspension of certificate',
  withdraw: 'withdraw certificate',
  reissue: 'reissue certificate',
} as const satisfies Readonly<Record<Change, string>>;

const found = (trx: Db, company: string, certificate: string) =>
  trx
    .selectFrom('certificate')
    .innerJoin('person', 'person.id', 'certificate.person_id')
    .select(['certificate.state', 'person.id as person', 'person.name'])
    .where('certificate.company_id', '=', company)
    .where('certificate.id', '=', certificate)
    .executeTakeFirst();

const isDone = async (trx: Db, company: string, event: string): Promise<boolean> =>
  (await trx
    .selectFrom('certificate_event')
    .select('id')
    .where('company_id', '=', company)
    .where('id', '=', event)
    .executeTakeFirst()) !== undefined;

export const change = (
  db: Db,
  act: Act,
  certificate: string,
  { id, change, reason }: Asked,
): Promise<Result<true, LifeFault>> =>
  inTurn(db, act.by.company, async (trx) => {
    const { company } = act.by;
    const row = await found(trx, company, certificate);
    if (!row || !isStanding(row.state)) return fault('ABSENT');
    if (await isDone(trx, company, id)) return ok(true);
    if (row.person === act.by.person) return fault('OWN');
    const after = changed(row.state, change, reason);
    if (!after.ok) return after;
    if (change === 'reissue') await reissue(trx, act, certificate, row.name);
    await trx
      .updateTable('certificate')
      .set({ state: after.value })
      .where('id', '=', certificate)
      .execute();
    const event = { id, kind: eventOf[change], reason: reason.trim() };
    await record(trx, doerOf(act), certificate, event);
    await append(trx, doerOf(act), { action: deeds[change], subject: certificate });
    return ok(true);
  });

/** Puts the name of today on paper; what it covers and what was examined stay as they were. */
async function reissue(trx: Db, act: Act, certificate: string, name: string): Promise<void> {
  const last = await lastIssue(trx, certificate);
  if (!last) return;
  const { scope, evidence } = last;
  const where = { company: act.by.company, certificate, at: act.at };
  await addIssue(trx, where, { number: last.number + 1, name, scope, evidence });
}
