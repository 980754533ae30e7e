/** What happens to a company's people. Each deed stands in the audit trail, by ids alone. */
import { fault, ok, type Result } from '#engine/result.ts';
import { type Role, rolesFrom, rolesText } from '../access/roles.ts';
import { append, type Deed } from '../audit/audit-trail.ts';
import { inTurn } from '../companies/in-turn.ts';
import type { Db } from '../database/open-database.ts';
import type { Person } from '../database/tables.ts';
import { freshId } from '../fresh-id.ts';
import { revokeOpen } from './cards.ts';
import { isOpenCrew } from './crews.ts';
import { searchText } from './folded.ts';
import { type Act, doerOf } from './member.ts';
import {
  detailsForm,
  type GivenPerson,
  type PersonFault,
  personForm,
  rolesForm,
  wrongField,
} from './person-form.ts';

type Outcome<T = true> = Promise<Result<T, PersonFault>>;
type Change = Partial<Omit<Person, 'id' | 'company_id'>>;

export async function create(db: Db, act: Act, given: GivenPerson): Outcome<string> {
  const { company } = act.by;
  const read = personForm.safeParse(given);
  if (!read.success) return fault(wrongField(read.error));
  const { name, number, crew, language, email } = read.data;
  return inTurn(db, company, async (trx) => {
    if (crew !== null && !(await isOpenCrew(trx, company, crew))) {
      return fault({ field: 'crew', code: 'ABSENT' });
    }
    if (await isNumberTaken(trx, company, number)) return fault({ field: 'number', code: 'TAKEN' });
    const id = freshId();
    await trx
      .insertInto('person')
      .values({
        id,
        company_id: company,
        crew_id: crew,
        name,
        number,
        roles: rolesText(read.data.roles),
        language,
        email,
        search: searchText(name, number),
        created_at: act.at,
      })
      .execute();
    await append(trx, doerOf(act), { action: 'add person', subject: id });
    return ok(id);
  });
}

type GivenDetails = Pick<GivenPerson, 'name' | 'number' | 'language' | 'email'>;

/** Changes what is written down about somebody. */
export async function change(db: Db, act: Act, person: string, given: GivenDetails): Outcome {
  const read = detailsForm.safeParse(given);
  if (!read.success) return fault(wrongField(read.error));
  return inTurn(db, act.by.company, async (trx) => {
    const before = await presentPerson(trx, act.by.company, person);
    if (!before) return fault({ field: 'name', code: 'ABSENT' });
    const next = read.data;
    const fields = (Object.keys(next) as (keyof typeof next)[]).filter(
      (field) => next[field] !== before[field],
    );
    if (fields.length === 0) return ok(true);
    if (
      fields.includes('number') &&
      (await isNumberTaken(trx, act.by.company, next.number, person))
    ) {
      return fault({ field: 'number', code: 'TAKEN' });
    }
    const search = searchText(next.name, next.number);
    await put(
      trx,
      act,
      person,
      { ...next, search },
      { action: 'change person', detail: { fields } },
    );
    return ok(true);
  });
}

export async function changeRoles(
  db: Db,
  act: Act,
  person: string,
  given: readonly string[],
): Outcome {
  const read = rolesForm.safeParse(given);
  if (!read.success) return fault(wrongRoles);
  return inTurn(db, act.by.company, async (trx) => {
    const before = await presentPerson(trx, act.by.company, person);
    if (!before) return fault({ field: 'roles', code: 'ABSENT' });
    const roles = rolesText(read.data);
    if (roles === before.roles) return ok(true);
    if (!read.data.includes('office') && (await isLastOffice(trx, before))) {
      return fault({ field: 'roles', code: 'LAST_OFFICE' });
    }
    const detail = { from: before.roles, to: roles };
    await put(trx, act, person, { roles }, { action: 'change roles', detail });
    return ok(true);
  });
}

const wrongRoles: PersonFault = { field: 'roles', code: 'WRONG' };

/** Moves somebody to another crew, or to none. */
export async function move(db: Db, act: Act, person: string, crew: string | null): Outcome {
  const { company } = act.by;
  return inTurn(db, company, async (trx) => {
    const before = await presentPerson(trx, company, person);
    const isThere = crew === null || (await isOpenCrew(trx, company, crew));
    if (!before || !isThere) return fault({ field: 'crew', code: 'ABSENT' });
    if (before.crew_id === crew) return ok(true);
    const detail = { from: before.crew_id, to: crew };
    await put(trx, act, person, { crew_id: crew }, { action: 'move person', detail });
    return ok(true);
  });
}

/** From now on the person cannot come in, and no card made for them works. What they did is kept. */
export async function leave(db: Db, act: Act, person: string): Outcome {
  return inTurn(db, act.by.company, async (trx) => {
    const before = await presentPerson(trx, act.by.company, person);
    if (!before) return fault({ field: 'name', code: 'ABSENT' });
    if (await isLastOffice(trx, before)) return fault({ field: 'roles', code: 'LAST_OFFICE' });
    await put(trx, act, person, { left_at: act.at }, { action: 'leave company' });
    await revokeOpen(trx, act.by.company, person, act.at);
    return ok(true);
  });
}

/** Undoes that: with the same login, roles and crew, where the crew is still at work. */
export async function comeBack(db: Db, act: Act, person: string): Outcome {
  const { company } = act.by;
  return inTurn(db, company, async (trx) => {
    const gone = await trx
      .selectFrom('person')
      .select('crew_id')
      .where('company_id', '=', company)
      .where('id', '=', person)
      .where('left_at', 'is not', null)
      .where('erased_at', 'is', null)
      .executeTakeFirst();
    if (!gone) return fault({ field: 'name', code: 'ABSENT' });
    const crew = gone.crew_id;
    const kept = crew !== null && (await isOpenCrew(trx, company, crew)) ? crew : null;
    await put(trx, act, person, { left_at: null, crew_id: kept }, { action: 'come back' });
    return ok(true);
  });
}

const presentPerson = (trx: Db, company: string, person: string) =>
  trx
    .selectFrom('person')
    .selectAll()
    .where('company_id', '=', company)
    .where('id', '=', person)
    .where('left_at', 'is', null)
    .executeTakeFirst();

async function isNumberTaken(
  trx: Db,
  company: string,
  number: string | null,
  but = '',
): Promise<boolean> {
  if (number === null) return false;
  const held = await trx
    .selectFrom('person')
    .select('id')
    .where('company_id', '=', company)
    .where('number', '=', number)
    .where('id', '!=', but)
    .executeTakeFirst();
  return held !== undefined;
}

/** Whether without this person nobody of the office could sign in. */
async function isLastOffice(trx: Db, person: Person): Promise<boolean> {
  if (!rolesFrom(person.roles).includes('office')) return false;
  return !(await officeWithout(trx, person.company_id, [person.id]));
}

/** Whether somebody of the office can sign in, those named apart. */
export async function officeWithout(
  trx: Db,
  company: string,
  but: readonly string[],
): Promise<boolean> {
  const office: Role = 'office';
  const others = await trx
    .selectFrom('person')
    .select('id')
    .where('company_id', '=', company)
    .where('left_at', 'is', null)
    .where('login_id', 'is not', null)
    .where('roles', 'like', `%${office}%`)
    .execute();
  return others.some(({ id }) => !but.includes(id));
}

async function put(
  trx: Db,
  act: Act,
  person: string,
  change: Change,
  deed: Omit<Deed, 'subject'>,
): Promise<void> {
  await trx
    .updateTable('person')
    .set(change)
    .where('company_id', '=', act.by.company)
    .where('id', '=', person)
    .execute();
  await append(trx, doerOf(act), { ...deed, subject: person });
}
