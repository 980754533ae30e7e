/** What somebody of the company decides about a sitting: each deed in its log and in the audit trail. */
import { accept, type Refusal } from '#engine/exam/accept.ts';
import type { Sitting } from '#engine/exam/sitting.ts';
import type { Grant, Happening } from '#engine/exam/sitting-event.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { append } from '../audit/audit-trail.ts';
import { inTurn } from '../companies/in-turn.ts';
import type { Database, Db } from '../database/open-database.ts';
import { type Act, doerOf } from '../people/member.ts';
import { dayOf } from './past.ts';
import { type Known, sittingBy, writeNew } from './sitting-log.ts';

export type SittingFault = Refusal | 'ABSENT';
type Outcome = Promise<Result<true, SittingFault>>;

const longestReason = 2000;

export const reasonFrom = (text: string): string =>
  text.normalize('NFC').replace(/\r\n?/g, '\n').trim().slice(0, longestReason);

/**
 * Does something with a sitting that nobody else writes to meanwhile: first the company, then the sitting,
 * always in that order.
 */
export const withSitting = <T>(
  { db, kind }: Database,
  act: Act,
  id: string,
  change: (trx: Db, known: Known) => Promise<Result<T, SittingFault>>,
): Promise<Result<T, SittingFault>> =>
  inTurn(db, act.by.company, async (trx) => {
    const known = await sittingBy(trx, act.by.company, id, kind);
    return known ? change(trx, known) : fault('ABSENT');
  });

/** Puts it into the log and the trail; tells where the sitting stands then. */
export async function happen(
  trx: Db,
  act: Act,
  known: Known,
  happening: Happening,
  action: string,
): Promise<Result<Sitting, Refusal>> {
  const { id: subject, person_id: person } = known.row;
  const told = { ...happening, sitting: subject };
  const taken = accept(known.sitting, told, Date.parse(act.at));
  if (!taken.ok) return taken;
  const { sitting: after } = taken.value;
  await writeNew(trx, [{ before: known, after }]);
  const { kind: _kind, ...detail } = happening;
  await append(trx, doerOf(act), { action, subject, detail: { person, ...detail } });
  return ok(after);
}

/** Gives time: minutes on top, or a stretch in which nobody could work. */
export const grantTime = (
  database: Database,
  act: Act,
  id: string,
  { grant, because }: { readonly grant: Grant; readonly because: string },
): Outcome =>
  withSitting(database, act, id, async (trx, known) => {
    const granted = {
      kind: 'time-granted',
      by: act.by.person,
      because: reasonFrom(because),
      grant,
    };
    const taken = await happen(trx, act, known, granted as Happening, 'grant time');
    return taken.ok ? ok(true) : taken;
  });

/** It counts as no try; what was answered is kept. Also once it was released. */
export const voidSitting = (database: Database, act: Act, id: string, because: string): Outcome =>
  withSitting(database, act, id, async (trx, known) => {
    const voided = { kind: 'voided', by: act.by.person, because: reasonFrom(because) } as const;
    const taken = await happen(trx, act, known, voided, 'void sitting');
    if (!taken.ok) return taken;
    await writeVoid(trx, act, known, voided.because);
    return ok(true);
  });

/** The result of what was begun is void; one that never was leaves none. */
async function writeVoid(
  trx: Db,
  act: Act,
  { row, sitting }: Known,
  because: string,
): Promise<void> {
  if (!sitting.opened) return;
  const opened = new Date(sitting.opened.at).toISOString();
  await trx
    .insertInto('part_result')
    .values({
      id: row.id,
      application_id: row.application_id,
      company_id: row.company_id,
      person_id: row.person_id,
      scheme: row.scheme,
      part: row.part,
      on_date: dayOf(opened),
      result: 'void',
      examiners: JSON.stringify([act.by.person]),
      detail: JSON.stringify({ kind: 'void', because }),
      content_revision: row.content_revision,
      made_at: act.at,
      released_at: act.at,
    })
    .onConflict((conflict) => conflict.column('id').doUpdateSet({ result: 'void' }))
    .execute();
}
