/**
 * Releasing a sitting: whoever examines has gone through it, the answers are marked, and result and
 * responses are written with it in one transaction. From then on it counts, and the candidate sees it.
 */
import type { Content } from '#engine/compile/content.ts';
import type { IsoDate } from '#engine/calendar.ts';
import { accept } from '#engine/exam/accept.ts';
import type { SchemeId } from '#engine/exam/scheme.ts';
import { keptFromExamining, type KeptOut } from '#engine/exam/separation.ts';
import { deadlineOf, type Sitting } from '#engine/exam/sitting.ts';
import type { Happening } from '#engine/exam/sitting-event.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import type { Database, Db } from '../database/open-database.ts';
import type { Act } from '../people/member.ts';
import { bankName } from './bank-name.ts';
import { happen, type SittingFault, withSitting } from './decide-sitting.ts';
import { type MarkedSitting, markSitting } from './marked-sitting.ts';
import { dayOf } from './past.ts';
import { type Known, writeNew } from './sitting-log.ts';

/** `UNKNOWN_PART`: the scheme has it no more. `KEPT_OUT`: who trained a candidate examines none of it. */
export type ReleaseFault =
  | { readonly code: SittingFault | 'UNKNOWN_PART' }
  | { readonly code: 'KEPT_OUT'; readonly why: KeptOut };

export async function releaseSitting(
  database: Database,
  act: Act,
  content: Content,
  id: string,
): Promise<Result<MarkedSitting, ReleaseFault>> {
  let refused: ReleaseFault | undefined;
  const released = await withSitting<MarkedSitting>(database, act, id, async (trx, found) => {
    refused = await keptOut(trx, act, content, found);
    if (refused) return fault('ABSENT');
    const known = await upToDate(trx, act, found);
    const marked = markSitting(content, known);
    if (!marked) refused = { code: 'UNKNOWN_PART' };
    if (!marked) return fault('ABSENT');
    const releasing = { kind: 'released', by: act.by.person } as const;
    const taken = await happen(trx, act, known, releasing, 'release sitting');
    if (!taken.ok) return taken;
    await writeResult(trx, act, content, { ...known, sitting: taken.value }, marked);
    return ok(marked);
  });
  if (released.ok) return released;
  return fault(refused ?? { code: released.error });
}

async function keptOut(
  trx: Db,
  act: Act,
  content: Content,
  { row }: Known,
): Promise<ReleaseFault | undefined> {
  const scheme = content.schemes.get(row.scheme as SchemeId);
  if (!scheme) return { code: 'UNKNOWN_PART' };
  const rows = await trx
    .selectFrom('involvement')
    .select(['person_id', 'role', 'on_date'])
    .where('candidate_id', '=', row.person_id)
    .execute();
  const involved = rows.map(({ person_id, role, on_date }) => ({
    person: person_id,
    as: role === 'trainer' ? ('trainer' as const) : ('examiner' as const),
    on: on_date as IsoDate,
  }));
  const case_ = { candidate: row.person_id, involved };
  const [why] = keptFromExamining(scheme, case_, act.by.person, dayOf(act.at));
  if (!why) return undefined;
  return why.code === 'IS_CANDIDATE' ? { code: 'by-the-candidate' } : { code: 'KEPT_OUT', why };
}

/** With what the log has to tell before it closes: that the time ran out, and what was retired meanwhile. */
async function upToDate(trx: Db, act: Act, known: Known): Promise<Known> {
  const now = Date.parse(act.at);
  const happenings = await retirings(trx, known);
  const { phase, ranOut } = known.sitting;
  const deadline = deadlineOf(known.sitting);
  if (phase === 'open' && ranOut === undefined && deadline !== undefined && now > deadline) {
    happenings.push({ kind: 'time-ran-out' });
  }
  const after = happenings.reduce<Sitting>((sitting, happening) => {
    const taken = accept(sitting, { ...happening, sitting: known.row.id }, now);
    return taken.ok ? taken.value.sitting : sitting;
  }, known.sitting);
  await writeNew(trx, [{ before: known, after }]);
  return { row: { ...known.row, phase: after.phase }, sitting: after };
}

async function retirings(trx: Db, { row, sitting }: Known): Promise<Happening[]> {
  const rows = await trx
    .selectFrom('retired_item')
    .select(['item', 'by_person_id as by', 'because'])
    .where('company_id', '=', row.company_id)
    .where('item', 'in', [...sitting.plan.items.map(bankName), ''])
    .execute();
  return sitting.plan.items
    .filter((item) => !sitting.retired.has(item))
    .flatMap((item) =>
      rows
        .filter((row) => row.item === bankName(item))
        .map(({ by, because }) => ({ kind: 'item-retired', item, by, because }) as const),
    );
}

async function writeResult(
  trx: Db,
  act: Act,
  content: Content,
  { row, sitting }: Known,
  { outcome, share, detail, responses }: MarkedSitting,
): Promise<void> {
  const begun = dayOf(new Date(sitting.opened?.at ?? Date.parse(act.at)).toISOString());
  const of = {
    company_id: row.company_id,
    person_id: row.person_id,
    scheme: row.scheme,
    part: row.part,
    on_date: begun,
  };
  await trx
    .insertInto('part_result')
    .values({
      ...of,
      id: row.id,
      application_id: row.application_id,
      // Where everything was retired it counts as no try.
      result: outcome === 'nothing-to-count' ? 'void' : outcome,
      share: share ?? null,
      examiners: JSON.stringify([act.by.person]),
      detail: JSON.stringify(detail),
      content_revision: content.revision,
      made_at: act.at,
      released_at: act.at,
    })
    .execute();
  if (responses.length > 0) {
    await trx
      .insertInto('item_response')
      .values(
        responses.map(({ item, topic, wasAnswered, isRight }) => ({
          ...of,
          sitting_id: row.id,
          item,
          topic,
          was_answered: wasAnswered ? 1 : 0,
          is_right: isRight ? 1 : 0,
        })),
      )
      .execute();
  }
  await trx
    .insertInto('involvement')
    .values({
      company_id: row.company_id,
      candidate_id: row.person_id,
      person_id: act.by.person,
      role: 'examiner',
      on_date: dayOf(act.at),
    })
    .onConflict((conflict) => conflict.doNothing())
    .execute();
}
