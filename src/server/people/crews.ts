import { fault, ok, type Result } from '#engine/result.ts';
import { append, type Deed } from '../audit/audit-trail.ts';
import { inTurn } from '../companies/in-turn.ts';
import type { Db } from '../database/open-database.ts';
import { freshId } from '../fresh-id.ts';
import type { Crew } from './crew-list.ts';
import { folded } from './folded.ts';
import { type Act, doerOf } from './member.ts';
import { nameForm } from './names.ts';

/** `ABSENT`: there is no such crew in the company, or it is closed. */
export type CrewFault = 'NAME_WRONG' | 'NAME_TAKEN' | 'ABSENT';

/** Every crew of a company, those at work first, by name: for programs; a screen reads a page of them. */
export async function list(db: Db, company: string): Promise<readonly Crew[]> {
  const crews = await db
    .selectFrom('crew')
    .select(['id', 'name', 'closed_at as closedAt'])
    .where('company_id', '=', company)
    .execute();
  const counts = await db
    .selectFrom('person')
    .select(({ fn }) => ['crew_id', fn.countAll().as('people')])
    .where('company_id', '=', company)
    .where('left_at', 'is', null)
    .groupBy('crew_id')
    .execute();
  const people = new Map(counts.map((row) => [row.crew_id, Number(row.people)]));
  const order = ({ name, closedAt }: (typeof crews)[number]) =>
    `${closedAt === null ? 0 : 1} ${folded(name)}`;
  return crews
    .map((crew) => ({ ...crew, people: people.get(crew.id) ?? 0 }))
    .sort((a, b) => order(a).localeCompare(order(b)));
}

/** A crew's name by id, for those at work. */
export async function openCrews(
  db: Db,
  company: string,
): Promise<readonly { readonly id: string; readonly name: string }[]> {
  return db
    .selectFrom('crew')
    .select(['id', 'name'])
    .where('company_id', '=', company)
    .where('closed_at', 'is', null)
    .orderBy('name')
    .execute();
}

const atWork = (db: Db, company: string) =>
  db
    .selectFrom('crew')
    .select('id')
    .where('company_id', '=', company)
    .where('closed_at', 'is', null);

export const isOpenCrew = async (db: Db, company: string, crew: string): Promise<boolean> =>
  (await atWork(db, company).where('id', '=', crew).executeTakeFirst()) !== undefined;

async function isTaken(trx: Db, company: string, name: string, but = ''): Promise<boolean> {
  const same = atWork(trx, company).where('folded_name', '=', folded(name)).where('id', '!=', but);
  return (await same.executeTakeFirst()) !== undefined;
}

export async function create(
  db: Db,
  act: Act,
  given: { readonly name: string },
): Promise<Result<string, CrewFault>> {
  const { company } = act.by;
  const name = nameForm.safeParse(given.name);
  if (!name.success) return fault('NAME_WRONG');
  return inTurn(db, company, async (trx) => {
    if (await isTaken(trx, company, name.data)) return fault('NAME_TAKEN');
    const id = freshId();
    await trx
      .insertInto('crew')
      .values({
        id,
        company_id: company,
        name: name.data,
        folded_name: folded(name.data),
        created_at: act.at,
      })
      .execute();
    await append(trx, doerOf(act), { action: 'make crew', subject: id });
    return ok(id);
  });
}

export async function rename(
  db: Db,
  act: Act,
  crew: string,
  given: { readonly name: string },
): Promise<Result<true, CrewFault>> {
  const { company } = act.by;
  const name = nameForm.safeParse(given.name);
  if (!name.success) return fault('NAME_WRONG');
  return inTurn(db, company, async (trx) => {
    if (!(await isOpenCrew(trx, company, crew))) return fault('ABSENT');
    if (await isTaken(trx, company, name.data, crew)) return fault('NAME_TAKEN');
    const named = { name: name.data, folded_name: folded(name.data) };
    await changeCrew(trx, act, crew, named, { action: 'rename crew', subject: crew });
    return ok(true);
  });
}

/** Closes a crew; whoever is in it moves to another, or to none. */
export async function close(
  db: Db,
  act: Act,
  crew: string,
  to: string | null,
): Promise<Result<true, CrewFault>> {
  const { company } = act.by;
  return inTurn(db, company, async (trx) => {
    const [closes, takes] = [crew, to ?? crew];
    const isThere =
      (await isOpenCrew(trx, company, closes)) && (await isOpenCrew(trx, company, takes));
    if (!isThere || to === crew) return fault('ABSENT');
    await trx
      .updateTable('person')
      .set({ crew_id: to })
      .where('company_id', '=', company)
      .where('crew_id', '=', crew)
      .where('left_at', 'is', null)
      .execute();
    const deed = { action: 'close crew', subject: crew, detail: { peopleTo: to } };
    await changeCrew(trx, act, crew, { closed_at: act.at }, deed);
    return ok(true);
  });
}

/** Opens a closed crew again, with nobody in it. */
export async function reopen(db: Db, act: Act, crew: string): Promise<Result<true, CrewFault>> {
  const { company } = act.by;
  return inTurn(db, company, async (trx) => {
    const closed = await trx
      .selectFrom('crew')
      .select('name')
      .where('company_id', '=', company)
      .where('id', '=', crew)
      .where('closed_at', 'is not', null)
      .executeTakeFirst();
    if (!closed) return fault('ABSENT');
    if (await isTaken(trx, company, closed.name)) return fault('NAME_TAKEN');
    await changeCrew(trx, act, crew, { closed_at: null }, { action: 'reopen crew', subject: crew });
    return ok(true);
  });
}

async function changeCrew(
  trx: Db,
  act: Act,
  crew: string,
  change: {
    readonly name?: string;
    readonly folded_name?: string;
    readonly closed_at?: string | null;
  },
  deed: Deed,
): Promise<void> {
  await trx
    .updateTable('crew')
    .set(change)
    .where('company_id', '=', act.by.company)
    .where('id', '=', crew)
    .execute();
  await append(trx, doerOf(act), deed);
}
