/**
 * What a roster would change: every row as new, changed, unchanged or faulty, before anything is written.
 * A row is somebody with its number; or else with its name folded, where that is one person and no number
 * contradicts. An empty cell changes nothing. Takes time in proportion to rows and people.
 */
import type { ImportPlan, PlannedRow } from '#engine/record/import-plan.ts';
import { rolesFrom, rolesText } from '../../access/roles.ts';
import type { Db } from '../../database/open-database.ts';
import { digestOf } from '../../import/looked-at.ts';
import { folded } from '../folded.ts';
import { openCrews } from '../crews.ts';
import type { RosterFault, RosterRow, RosterRows } from './read-rows.ts';

export type Known = {
  readonly id: string;
  readonly name: string;
  readonly number: string | null;
  readonly crew_id: string | null;
  readonly roles: string;
  readonly language: string | null;
  readonly email: string | null;
  readonly login_id: string | null;
  readonly left_at: string | null;
};

/** `back`: the person had left. `from` and `to` are as kept; of a crew its name. */
export type RowChange = {
  readonly field: 'name' | 'number' | 'crew' | 'roles' | 'language' | 'email' | 'back';
  readonly from: string | null;
  readonly to: string | null;
};

export type PlanRow = RosterRow &
  PlannedRow<RosterFault> & {
    readonly person: string | null;
    readonly changes: readonly RowChange[];
  };

export type Plan = ImportPlan<PlanRow> & {
  /** Crews that are not there yet. */
  readonly crews: readonly string[];
};

const knownPeople = (db: Db, company: string): Promise<readonly Known[]> =>
  db
    .selectFrom('person')
    .select([
      'id',
      'name',
      'number',
      'crew_id',
      'roles',
      'language',
      'email',
      'login_id',
      'left_at',
    ])
    .where('company_id', '=', company)
    .where('erased_at', 'is', null)
    .execute();

/** Whom a row is about: nobody yet, somebody, or more than one can tell. */
function finderIn(people: readonly Known[]) {
  const byNumber = new Map(people.map((person) => [person.number ?? '', person]));
  byNumber.delete('');
  const byName = new Map<string, Known[]>();
  for (const person of people) {
    const name = folded(person.name);
    byName.set(name, [...(byName.get(name) ?? []), person]);
  }
  return ({ given }: RosterRow): Known | 'several' | undefined => {
    const numbered = given.number === undefined ? undefined : byNumber.get(given.number);
    if (numbered) return numbered;
    const named = (byName.get(folded(given.name ?? '')) ?? []).filter(
      ({ number }) => given.number === undefined || number === null,
    );
    const here = named.filter(({ left_at: left }) => left === null);
    const likely = here.length > 0 ? here : named;
    const unnumbered = likely.filter(({ number }) => number === null);
    const [first, second] = unnumbered.length === 1 ? unnumbered : likely;
    return second ? 'several' : first;
  };
}

function changesOf({ given }: RosterRow, person: Known, crewName: string | null): RowChange[] {
  const changes: RowChange[] = [];
  const compare = (field: RowChange['field'], from: string | null, to: string | undefined) => {
    if (to !== undefined && to !== from) changes.push({ field, from, to });
  };
  compare('name', person.name, given.name);
  compare('number', person.number, given.number);
  if (folded(crewName ?? '') !== folded(given.crew ?? crewName ?? '')) {
    compare('crew', crewName, given.crew);
  }
  compare('roles', person.roles, given.roles && rolesText(given.roles));
  compare('language', person.language, given.language);
  compare('email', person.email, given.email);
  if (person.left_at !== null) changes.push({ field: 'back', from: person.left_at, to: null });
  return changes;
}

export async function plan(db: Db, company: string, { rows, ignored }: RosterRows): Promise<Plan> {
  const people = await knownPeople(db, company);
  const crews = await openCrews(db, company);
  const crewNames = new Map(crews.map(({ id, name }) => [id, name]));
  const find = finderIn(people);
  const rowOfNumber = new Map<string, number>();
  const rowOfPerson = new Map<string, number>();
  const rowOfNewName = new Map<string, number>();

  const planned = rows.map((row): PlanRow => {
    const faults: RosterFault[] = [...row.faults];
    const twice = (column: 'name' | 'number', seen: Map<string, number>, key: string) => {
      const before = seen.get(key);
      if (before === undefined) seen.set(key, row.row);
      else faults.push({ column, code: 'TWICE', row: before });
    };
    const { name, number } = row.given;
    if (number !== undefined) twice('number', rowOfNumber, number);
    const about = find(row);
    if (about === 'several') faults.push({ column: 'name', code: 'AMBIGUOUS' });
    const person = about === 'several' ? undefined : about;
    const isTold = () => faults.some(({ code }) => code === 'TWICE');
    if (person && !isTold()) twice('name', rowOfPerson, person.id);
    if (!about && number === undefined && name !== undefined) {
      twice('name', rowOfNewName, folded(name));
    }
    const crewName = person?.crew_id ? (crewNames.get(person.crew_id) ?? null) : null;
    const changes = person ? changesOf(row, person, crewName) : [];
    const state =
      faults.length > 0 ? 'faulty' : !person ? 'new' : changes.length > 0 ? 'changed' : 'unchanged';
    return { ...row, faults, state, person: person?.id ?? null, changes };
  });
  return finished(withOffice(planned, people), crews, ignored);
}

/** Rows that together would leave nobody in the office who can sign in are faulty. */
function withOffice(rows: readonly PlanRow[], people: readonly Known[]): readonly PlanRow[] {
  const loses = ({ state, given }: PlanRow) =>
    state === 'changed' && given.roles !== undefined && !given.roles.includes('office');
  const losing = new Set(rows.filter(loses).map(({ person }) => person));
  const keepers = people.filter(
    (person) =>
      person.login_id !== null &&
      person.left_at === null &&
      rolesFrom(person.roles).includes('office'),
  );
  if (keepers.length === 0 || keepers.some(({ id }) => !losing.has(id))) return rows;
  const last = new Set(keepers.map(({ id }) => id));
  return rows.map((row) =>
    row.person !== null && last.has(row.person) && loses(row)
      ? { ...row, state: 'faulty', faults: [{ column: 'roles', code: 'LAST_OFFICE' }] }
      : row,
  );
}

function finished(
  rows: readonly PlanRow[],
  crews: readonly { readonly name: string }[],
  ignored: readonly string[],
): Plan {
  const known = new Set(crews.map(({ name }) => folded(name)));
  const missing = new Map<string, string>();
  for (const { state, given, changes } of rows) {
    const isMoved = state === 'new' || changes.some(({ field }) => field === 'crew');
    const { crew } = given;
    if (state === 'faulty' || !isMoved || crew === undefined) continue;
    const key = folded(crew);
    if (!known.has(key) && !missing.has(key)) missing.set(key, crew);
  }
  const does = ({ row, given, state, person, changes }: PlanRow) => [
    row,
    given,
    state,
    person,
    changes,
  ];
  return { rows, crews: [...missing.values()], ignored, digest: digestOf(rows, does) };
}
