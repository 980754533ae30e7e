/** A roster file: looked at, written, and written out again. */
import { csv } from '#engine/takeoff/csv.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import type { Language } from '#engine/text.ts';
import { rolesFrom, rolesText } from '../../access/roles.ts';
import { appendAll, type Deed } from '../../audit/audit-trail.ts';
import { inTurn } from '../../companies/in-turn.ts';
import type { Db } from '../../database/open-database.ts';
import { freshId } from '../../fresh-id.ts';
import { openCrews } from '../crews.ts';
import { folded, searchText } from '../folded.ts';
import { type Act, doerOf } from '../member.ts';
import { columns, headingOf, roleHeading } from './columns.ts';
import { harmless } from './harmless.ts';
import type { FileFault } from './decode.ts';
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

type How = {
  /** Of the plan that was looked at. */
  readonly digest: string;
  /** Writes the sound rows although others are faulty. */
  readonly leaveOut: boolean;
};

/** `CHANGED` and `FAULTY` come with the plan as it is now; nothing is written. */
export type WriteFault = FileFault | { readonly code: 'CHANGED' | 'FAULTY'; readonly plan: Plan };

export type Written = { readonly added: number; readonly changed: number; readonly crews: number };

/** Writes a roster that was looked at, all of it or nothing. */
export async function write(
  db: Db,
  act: Act,
  text: string,
  { digest, leaveOut }: How,
): Promise<Result<Written, WriteFault>> {
  const read = rowsFrom(text);
  if (!read.ok) return read;
  const { company } = act.by;
  return inTurn(db, company, async (trx) => {
    const now = await plan(trx, company, read.value);
    if (now.digest !== digest) return fault({ code: 'CHANGED', plan: now });
    if (!leaveOut && now.rows.some(({ state }) => state === 'faulty')) {
      return fault({ code: 'FAULTY', plan: now });
    }
    const deeds: Deed[] = [];
    const crewIds = await withNewCrews(trx, act, now.crews, deeds);
    const crewOf = (name: string | undefined) => crewIds.get(folded(name ?? '')) ?? null;
    const isOpen = (crew: string | null) => [...crewIds.values()].some((id) => id === crew);
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
      .values({ id, company_id: company, name, created_at: act.at })
      .execute();
    deeds.push({ action: 'make crew', subject: id });
  }
  const open = await openCrews(trx, company);
  return new Map(open.map(({ id, name }) => [folded(name), id]));
}

/** Rows written by one statement: well under the number of values that either database takes. */
const block = 500;

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
  for (let from = 0; from < people.length; from += block) {
    await trx
      .insertInto('person')
      .values(people.slice(from, from + block))
      .execute();
  }
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

/** Everybody with a company as a file that can be read in again; with the mark by which spreadsheets know UTF-8. */
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
    return columns.map((column) => harmless(cells[column] ?? ''));
  });
  return `\uFEFF${csv([columns.map((column) => headingOf(column, language)), ...rows])}`;
}
