/**
 * Who had what to do with a candidate. Whoever gave them work, or said something of what they tried, has
 * trained them, whether or not anybody entered it: that is derived here, and never from what they say.
 */
import type { IsoDate } from '#engine/calendar.ts';
import { isoDateFrom } from '#engine/calendar.ts';
import type { Involvement } from '#engine/exam/separation.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { append } from '../audit/audit-trail.ts';
import type { Db } from '../database/open-database.ts';
import { dayOf } from '../exams/past.ts';
import { type Act, doerOf } from '../people/member.ts';

type Row = { readonly person: string; readonly last: string | null };

const trainersFrom = (rows: readonly Row[]): readonly Involvement[] =>
  rows.flatMap(({ person, last }) =>
    last === null ? [] : [{ person, as: 'trainer' as const, on: dayOf(last) }],
  );

/** Gave them work: to them, to the crew that they are in, or such as they tried. */
async function gaveWork(db: Db, company: string, candidate: string): Promise<readonly Row[]> {
  const named = db
    .selectFrom('assignment_for')
    .select('assignment_id as id')
    .where('person_id', '=', candidate);
  const toCrew = db
    .selectFrom('assignment_for')
    .innerJoin('person', 'person.crew_id', 'assignment_for.crew_id')
    .select('assignment_for.assignment_id as id')
    .where('person.id', '=', candidate);
  const tried = db
    .selectFrom('progress')
    .innerJoin('assignment_work', 'assignment_work.id', 'progress.work_id')
    .select('assignment_work.assignment_id as id')
    .where('progress.person_id', '=', candidate);
  return db
    .selectFrom('assignment')
    .select(({ fn }) => ['made_by as person', fn.max('made_at').as('last')])
    .where('company_id', '=', company)
    .where('id', 'in', named.union(toCrew).union(tried))
    .groupBy('made_by')
    .execute();
}

const commented = (db: Db, company: string, candidate: string): Promise<readonly Row[]> =>
  db
    .selectFrom('decision')
    .innerJoin('attempt', 'attempt.id', 'decision.attempt_id')
    .select(({ fn }) => ['decision.decided_by as person', fn.max('decision.decided_at').as('last')])
    .where('decision.company_id', '=', company)
    .where('attempt.person_id', '=', candidate)
    .groupBy('decision.decided_by')
    .execute();

/** All of it: as entered, as signed, and as derived. */
export async function involvedWith(
  db: Db,
  company: string,
  candidate: string,
): Promise<readonly Involvement[]> {
  const entered = await db
    .selectFrom('involvement')
    .select(['person_id as person', 'role', 'on_date'])
    .where('candidate_id', '=', candidate)
    .orderBy('on_date')
    .execute();
  return [
    ...entered.map(({ person, role, on_date }) => ({
      person,
      as: role as Involvement['as'],
      on: on_date as IsoDate,
    })),
    ...trainersFrom(await gaveWork(db, company, candidate)),
    ...trainersFrom(await commented(db, company, candidate)),
  ];
}

/** Written once, however often it is said. */
export const keepInvolvement = async (
  trx: Db,
  company: string,
  candidate: string,
  { person, as, on }: Involvement,
): Promise<void> => {
  await trx
    .insertInto('involvement')
    .values({
      company_id: company,
      candidate_id: candidate,
      person_id: person,
      role: as,
      on_date: on,
    })
    .onConflict((conflict) => conflict.doNothing())
    .execute();
};

/** `DAY_AHEAD`: nobody has trained yet whom they will train. */
export type TrainerFault = 'UNKNOWN_PERSON' | 'NOT_A_DAY' | 'DAY_AHEAD';

/** Enters that somebody trained a candidate, as where it was done on the job and not by given work. */
export async function enterTrainer(
  db: Db,
  act: Act,
  {
    candidate,
    person,
    on,
  }: { readonly candidate: string; readonly person: string; readonly on: string },
): Promise<Result<true, TrainerFault>> {
  const { company } = act.by;
  const day = isoDateFrom(on);
  if (!day.ok) return fault('NOT_A_DAY');
  if (day.value > dayOf(act.at)) return fault('DAY_AHEAD');
  return db.transaction().execute(async (trx) => {
    const both = await trx
      .selectFrom('person')
      .select('id')
      .where('company_id', '=', company)
      .where('id', 'in', [candidate, person])
      .execute();
    if (both.length < 2) return fault('UNKNOWN_PERSON');
    await keepInvolvement(trx, company, candidate, { person, as: 'trainer', on: day.value });
    await append(trx, doerOf(act), {
      action: 'enter trainer',
      subject: candidate,
      detail: { person, on: day.value },
    });
    return ok(true);
  });
}
