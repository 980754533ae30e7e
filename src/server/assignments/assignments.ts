/** Work that a trainer gives to crews and people: given, moved to other dates, withdrawn; never deleted. */
import type { Content } from '#engine/compile/content.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { append, type Deed } from '../audit/audit-trail.ts';
import { inTurn } from '../companies/in-turn.ts';
import type { Db } from '../database/open-database.ts';
import { freshId } from '../fresh-id.ts';
import { type Act, doerOf } from '../people/member.ts';
import { type Composed, composedFrom, datesFrom, type Draft, type DraftFault } from './draft.ts';

/** Keeps it and tells its id, or tells every fault. */
export async function compose(
  db: Db,
  act: Act,
  content: Content,
  draft: Draft,
): Promise<Result<string, readonly DraftFault[]>> {
  const read = composedFrom(content, draft, act.at);
  if (!read.ok) return read;
  const composed = read.value;
  return inTurn(db, act.by.company, async (trx) => {
    const absent = await absentOf(trx, act.by.company, composed);
    if (absent.length > 0) return fault(absent);
    return ok(await write(trx, act, composed));
  });
}

async function absentOf(
  trx: Db,
  company: string,
  { crews, persons }: Composed,
): Promise<readonly DraftFault[]> {
  const openCrews = trx
    .selectFrom('crew')
    .select('id')
    .where('company_id', '=', company)
    .where('closed_at', 'is', null)
    .where('id', 'in', [...crews, '']);
  const present = trx
    .selectFrom('person')
    .select('id')
    .where('company_id', '=', company)
    .where('left_at', 'is', null)
    .where('id', 'in', [...persons, '']);
  const [crewsThere, personsThere] = [await openCrews.execute(), await present.execute()];
  return [
    ...(crewsThere.length < crews.length ? [{ field: 'crews', code: 'UNKNOWN' } as const] : []),
    ...(personsThere.length < persons.length
      ? [{ field: 'persons', code: 'UNKNOWN' } as const]
      : []),
  ];
}

async function write(trx: Db, act: Act, composed: Composed): Promise<string> {
  const { title, note, opens, due, tries, works, crews, persons } = composed;
  const id = freshId();
  await trx
    .insertInto('assignment')
    .values({
      id,
      company_id: act.by.company,
      title,
      note,
      made_by: act.by.person,
      made_at: act.at,
      opens_at: opens,
      due_at: due,
      tries,
    })
    .execute();
  await trx
    .insertInto('assignment_work')
    .values(
      works.map(({ kind, count, pass, ...subject }, place) => ({
        id: freshId(),
        assignment_id: id,
        place,
        kind,
        subject: JSON.stringify(subject),
        pass,
        count,
      })),
    )
    .execute();
  await trx
    .insertInto('assignment_for')
    .values([
      ...crews.map((crew_id) => ({ assignment_id: id, crew_id, person_id: null })),
      ...persons.map((person_id) => ({ assignment_id: id, crew_id: null, person_id })),
    ])
    .execute();
  await append(trx, doerOf(act), {
    action: 'assign',
    subject: id,
    detail: { crews, persons, works: works.length },
  });
  return id;
}

/** `ABSENT`: there is no such assignment in the company, or it is withdrawn. */
export type ChangeFault = readonly DraftFault[] | 'ABSENT';

/** Other dates, or another number of tries. What was passed stays passed. */
export async function changeDates(
  db: Db,
  act: Act,
  assignment: string,
  given: Pick<Draft, 'opens' | 'due' | 'tries'>,
): Promise<Result<true, ChangeFault>> {
  const read = datesFrom(given, act.at);
  if (!read.ok) return read;
  const { opens, due, tries } = read.value;
  const deed = { action: 'change assignment dates', detail: { opens, due, tries } };
  return put(db, act, assignment, { opens_at: opens, due_at: due, tries }, deed);
}

/** From now on nothing counts for it; what was done stays. */
export const withdraw = (db: Db, act: Act, assignment: string): Promise<Result<true, 'ABSENT'>> =>
  put(db, act, assignment, { withdrawn_at: act.at }, { action: 'withdraw assignment' });

type Change = {
  readonly opens_at?: string;
  readonly due_at?: string | null;
  readonly tries?: number | null;
  readonly withdrawn_at?: string;
};

const put = (
  db: Db,
  act: Act,
  assignment: string,
  change: Change,
  deed: Omit<Deed, 'subject'>,
): Promise<Result<true, 'ABSENT'>> =>
  inTurn(db, act.by.company, async (trx) => {
    const changed = await trx
      .updateTable('assignment')
      .set(change)
      .where('company_id', '=', act.by.company)
      .where('id', '=', assignment)
      .where('withdrawn_at', 'is', null)
      .returning('id')
      .executeTakeFirst();
    if (!changed) return fault('ABSENT');
    await append(trx, doerOf(act), { ...deed, subject: assignment });
    return ok(true);
  });
