/** A roster file: looked at, written, and written out again. */
import type { FileFault } from '#engine/record/import-plan.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import type { Language } from '#engine/text.ts';
import { rolesFrom, rolesText } from '../../access/roles.ts';
import { appendAll, type Deed } from '../../audit/audit-trail.ts';
import { inTurn } from '../../companies/in-turn.ts';
import type { Db } from '../../database/open-database.ts';
import { freshId } from '../../fresh-id.ts';
import { csvText } from '../../import/csv-file.ts';
import { type How, inBlocks, notLookedAt, type WriteFault } from '../../import/looked-at.ts';
import { openCrews } from '../crews.ts';
import { folded, searchText } from '../folded.ts';
import { type Act, doerOf } from '../member.ts';
import { columns, roleHeading, rosterColumns } from './columns.ts';
import { type Plan, plan, type PlanRow } from './plan.ts';
import { rowsFrom } from './read-rows.ts';

/** What a roster would change. Writes nothing. */
export async function preview(
  db: Db,
  company: string,
  text: string,
): Promise<Result<Plan, FileFault>> {
  const read = rowsFrom(text);
  return read.ok ? ok(await plan(db, company, read.value)) : read;
}

export type Written = { readonly added: number; readonly changed: number; readonly crews: number };

/** Writes a roster that was looked at, all of it or nothing. */
export async function write(
  db: Db,
  act: Act,
  text: string,
  how: How,
): Promise<Result<Written, WriteFault<Plan>>> {
  const read = rowsFrom(text);
  if (!read.ok) return read;
  const { company } = act.by;
  return inTurn(db, company, async (trx) => {
    const now = await plan(trx, company, read.value);
    const unseen = notLookedAt(now, how);
    if (unseen) return fault(unseen);
    const deeds: Deed[] = [];
    const crewIds = await withNewCrews(trx, act, now.crews, deeds);
    const crewOf = (name: string | undefined) => crewIds.get(folded(name ?? '')) ?? null;
    const atWork = new Set(crewIds.values());
    const isOpen = (crew: string | null) => crew !== null && atWork.has(crew);
    const added = now.rows.filter(({ state }) => state === 'new');
    const changed = now.rows.filter(({ state }) => state === 'changed');
    await add(trx, act, added, crewOf, deeds);
    for (const row of changed) await change(trx, act, row, { crewOf, isOpen }, deeds);
    await appendAll(trx, doerOf(act), deeds);
    return ok({ added: added.length, changed: changed.length, crews: now.crews.length });
  });
}

type CrewOf = (name: string | undefined) => string | null;
type Crews = { readonly crewOf: CrewOf; readonly isOpen: (crew: string | null) => boolean };

async function withNewCrews(trx: Db, act: Act, names: readonly string[], deeds: Deed[]) {
  const { company } = act.by;
  for (const name of names) {
    const id = freshId();
    await trx
      .insertInto('crew')
      .values({ id, company_id: company, name, folded_name: folded(name), created_at: act.at })
      .execute();
    deeds.push({ action: 'make crew', subject: id });
  }
  const open = await openCrews(trx, company);
  return new Map(open.map(({ id, name }) => [folded(name), id]));
}

async function add(
  trx: Db,
  act: Act,
  rows: readonly PlanRow[],
  crewOf: CrewOf,
  deeds: Deed[],
): Promise<void> {
  const people = rows.map(({ given, name: written }) => {
    const name = given.name ?? written;
    const number = given.number ?? null;
    return {
      id: freshId(),
      company_id: act.by.company,
      crew_id: crewOf(given.crew),
      name,
      number,
      roles: rolesText(given.roles ?? ['apprentice']),
      language: given.language ?? null,
      email: given.email ?? null,
      search: searchText(name, number),
      created_at: act.at,
    };
  });
  await inBlocks(people, (some) => trx.insertInto('person').values(some).execute());
  deeds.push(...people.map(({ id }) => ({ action: 'add person', subject: id })));
}

async function change(
  trx: Db,
  act: Act,
  { person, given, changes }: PlanRow,
  { crewOf, isOpen }: Crews,
  deeds: Deed[],
): Promise<void> {
  const mine = trx
    .selectFrom('person')
    .where('company_id', '=', act.by.company)
    .where('id', '=', person);
  const before = await mine
    .select(['name', 'number', 'crew_id', 'roles'])
    .executeTakeFirstOrThrow();
  const fields = changes.map(({ field }) => field);
  const isIn = (field: (typeof fields)[number]) => fields.includes(field);
  const name = given.name ?? before.name;
  const number = given.number ?? before.number;
  const subject = person!;
  await trx
    .updateTable('person')
    .set({
      name,
      number,
      search: searchText(name, number),
      ...(isIn('crew') ? { crew_id: crewOf(given.crew) } : {}),
      ...(isIn('roles') ? { roles: rolesText(given.roles ?? []) } : {}),
      ...(isIn('language') ? { language: given.language ?? null } : {}),
      ...(isIn('email') ? { email: given.email ?? null } : {}),
      ...(isIn('back') ? { left_at: null } : {}),
      // Whoever comes back may have left a crew that is closed by now.
      ...(isIn('back') && !isIn('crew') && !isOpen(before.crew_id) ? { crew_id: null } : {}),
    })
    .where('company_id', '=', act.by.company)
    .where('id', '=', subject)
    .execute();
  if (isIn('back')) deeds.push({ action: 'come back', subject });
  const written = fields.filter((field) => !['crew', 'roles', 'back'].includes(field));
  if (written.length > 0) {
    deeds.push({ action: 'change person', subject, detail: { fields: written } });
  }
  if (isIn('roles')) {
    const detail = { from: before.roles, to: rolesText(given.roles ?? []) };
    deeds.push({ action: 'change roles', subject, detail });
  }
  if (isIn('crew')) {
    const detail = { from: before.crew_id, to: crewOf(given.crew) };
    deeds.push({ action: 'move person', subject, detail });
  }
}

/** Everybody with a company as a file that can be read in again. */
export async function exported(db: Db, company: string, language: Language): Promise<string> {
  const people = await db
    .selectFrom('person')
    .leftJoin('crew', 'crew.id', 'person.crew_id')
    .select(['person.name', 'number', 'crew.name as crew', 'roles', 'language', 'email'])
    .where('person.company_id', '=', company)
    .where('left_at', 'is', null)
    .orderBy('search')
    .orderBy('person.id')
    .execute();
  const rows = people.map(({ roles, ...person }) => {
    const held = rolesFrom(roles).map((role) => roleHeading(role, language));
    const cells = { ...person, roles: held.join(', ') };
    return columns.map((column) => cells[column]);
  });
  return csvText(
    columns.map((column) => rosterColumns.headingOf(column, language)),
    rows,
  );
}
