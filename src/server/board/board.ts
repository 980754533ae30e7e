/**
 * The competence board, a page at a time: people with where each stands in every qualification. A page comes
 * after a person and not after a count, as in the list of people; what it costs does not grow with those
 * before it.
 */
import { sql } from 'kysely';
import { type Competence, competenceOf } from '#engine/competence/competence.ts';
import {
  type QualificationState,
  qualificationStates,
} from '#engine/competence/qualification-state.ts';
import type { Scheme } from '#engine/exam/scheme.ts';
import type { Db } from '../database/open-database.ts';
import { folded } from '../people/folded.ts';
import { inState, speaks } from './in-state.ts';
import { dayFrom, recordsOf } from './records-of.ts';

export const pageLengths = [100, 500, 2000] as const;
const longestSearch = 100;

export const boardOrders = ['crew', 'name', 'end'] as const;
export type BoardOrder = (typeof boardOrders)[number];

export type Asked = {
  readonly search?: string | undefined;
  /** A crew, or `none` for those in no crew. */
  readonly crew?: string | undefined;
  readonly qualification?: string | undefined;
  /** Of that qualification, or of any. */
  readonly state?: string | undefined;
  /** `end`: by the last day of a certificate in force of that qualification, the soonest first. */
  readonly order?: BoardOrder | undefined;
  /** The person that the page comes after. */
  readonly after?: string | undefined;
  readonly most?: number | undefined;
};

export type BoardRow = {
  readonly id: string;
  readonly name: string;
  readonly number: string | null;
  readonly crew: string | null;
  readonly crewName: string | null;
  /** A cell for each qualification, in their order. */
  readonly cells: readonly Competence[];
};

export type BoardPage = { readonly rows: readonly BoardRow[]; readonly next: string | undefined };

export async function page(
  db: Db,
  company: string,
  at: string,
  schemes: readonly Scheme[],
  asked: Asked,
): Promise<BoardPage> {
  const most = asked.most ?? pageLengths[0];
  const found = await peopleFor(db, company, at, schemes, { ...asked, most: most + 1 });
  const shown = found.slice(0, most);
  const next = found.length > most ? shown.at(-1)?.id : undefined;
  return { rows: await rowsFor(db, company, at, schemes, shown), next };
}

type Someone = Omit<BoardRow, 'cells'>;

async function rowsFor(
  db: Db,
  company: string,
  at: string,
  schemes: readonly Scheme[],
  people: readonly Someone[],
): Promise<readonly BoardRow[]> {
  const known = await recordsOf(
    db,
    company,
    people.map(({ id }) => id),
  );
  const today = dayFrom(at);
  return people.map((person) => {
    const competence = competenceOf(schemes, known.get(person.id)!, today);
    return { ...person, cells: schemes.map(({ id }) => competence.get(id)!) };
  });
}

/** One person's cells; undefined for somebody who is not there. */
export async function one(
  db: Db,
  company: string,
  at: string,
  schemes: readonly Scheme[],
  person: string,
): Promise<BoardRow | undefined> {
  const found = await withCrews(db, company).where('person.id', '=', person).execute();
  return (await rowsFor(db, company, at, schemes, found))[0];
}

const withCrews = (db: Db, company: string) =>
  db
    .selectFrom('person')
    .leftJoin('crew', 'crew.id', 'person.crew_id')
    .select([
      'person.id',
      'person.name',
      'person.number',
      'person.crew_id as crew',
      'crew.name as crewName',
    ])
    .where('person.company_id', '=', company)
    .where('person.left_at', 'is', null)
    .where('person.erased_at', 'is', null);

type Query = ReturnType<typeof withCrews>;
type Place = { readonly search: string; readonly id: string; readonly crewName: string | null };

function filtered(
  query: Query,
  company: string,
  at: string,
  schemes: readonly Scheme[],
  { search = '', crew, qualification, state }: Asked,
): Query {
  const words = folded(search.slice(0, longestSearch)).split(' ').filter(Boolean);
  for (const word of words) {
    const begins = `% ${word.replace(/[\\%_]/g, '\\$&')}%`;
    query = query.where(sql<boolean>`' ' || person.search like ${begins} escape '\\'`);
  }
  if (crew === 'none') query = query.where('person.crew_id', 'is', null);
  else if (crew) query = query.where('person.crew_id', '=', crew);
  const asked = qualificationStates.find((one) => one === state);
  if (!asked) return query;
  const of = schemes.filter(({ id }) => !qualification || id === qualification);
  const conditions = of.map((scheme) => inState(scheme, asked, { company, today: dayFrom(at) }));
  if (conditions.length === 0) return query.where(sql<boolean>`1 = 0`);
  return query.where(sql<boolean>`(${sql.join(conditions, sql` or `)})`);
}

async function peopleFor(
  db: Db,
  company: string,
  at: string,
  schemes: readonly Scheme[],
  asked: Asked & { readonly most: number },
): Promise<readonly Someone[]> {
  const query = filtered(withCrews(db, company), company, at, schemes, asked);
  const scheme = schemes.find(({ id }) => id === asked.qualification);
  if (asked.order === 'end' && scheme) return byEnd(query, company, dayFrom(at), scheme.id, asked);
  const after = asked.after ? await placeOf(db, company, asked.after) : undefined;
  if (asked.order === 'name') return byName(query, after, asked.most);
  return byCrew(query, company, after, asked.most);
}

const placeOf = (db: Db, company: string, person: string): Promise<Place | undefined> =>
  db
    .selectFrom('person')
    .leftJoin('crew', 'crew.id', 'person.crew_id')
    .select(['person.search', 'person.id', 'crew.name as crewName'])
    .where('person.company_id', '=', company)
    .where('person.id', '=', person)
    .executeTakeFirst();

function byName(query: Query, after: Place | undefined, most: number) {
  const from = after
    ? query.where(sql<boolean>`(person.search, person.id) > (${after.search}, ${after.id})`)
    : query;
  return from.orderBy('person.search').orderBy('person.id').limit(most).execute();
}

/** Crew by crew, by their names, each crew by the names in it; those in no crew come last. */
async function byCrew(query: Query, company: string, after: Place | undefined, most: number) {
  const found: Someone[] = [];
  if (!after || after.crewName !== null) {
    // No other crew that is at work has the same name.
    let crews = query.where('crew.company_id', '=', company);
    if (after) {
      crews = crews.where('crew.name', '>=', after.crewName).where(
        sql<boolean>`(crew.name > ${after.crewName} or
            (person.search, person.id) > (${after.search}, ${after.id}))`,
      );
    }
    found.push(
      ...(await crews
        .orderBy('crew.name')
        .orderBy('person.search')
        .orderBy('person.id')
        .limit(most)
        .execute()),
    );
  }
  if (found.length >= most) return found;
  const rest = after?.crewName === null ? after : undefined;
  const loose = await byName(query.where('person.crew_id', 'is', null), rest, most - found.length);
  return [...found, ...loose];
}

async function byEnd(
  query: Query,
  company: string,
  today: string,
  scheme: string,
  { after, most }: Asked & { readonly most: number },
): Promise<readonly Someone[]> {
  let ending = query
    .innerJoin('certificate as c', 'c.person_id', 'person.id')
    .where('c.company_id', '=', company)
    .where('c.scheme', '=', scheme)
    .where('c.state', '=', 'in-force')
    .where('c.valid_until', '>=', today)
    .where(speaks);
  if (after) {
    const last = sql`(select c.valid_until from certificate c
      where c.person_id = ${after} and c.scheme = ${scheme} and ${speaks})`;
    ending = ending.where(sql<boolean>`(c.valid_until, person.id) > (${last}, ${after})`);
  }
  return ending.orderBy('c.valid_until').orderBy('person.id').limit(most).execute();
}

/** How many are in each state of each qualification, for those that filter by it. */
export async function counts(
  db: Db,
  company: string,
  at: string,
  schemes: readonly Scheme[],
  states: readonly QualificationState[],
): Promise<ReadonlyMap<string, Readonly<Partial<Record<QualificationState, number>>>>> {
  const today = dayFrom(at);
  const counted = new Map<string, Partial<Record<QualificationState, number>>>();
  for (const scheme of schemes) {
    const of: Partial<Record<QualificationState, number>> = {};
    for (const state of states) {
      const row = await db
        .selectFrom('person')
        .select(({ fn }) => fn.countAll().as('people'))
        .where('person.company_id', '=', company)
        .where('person.left_at', 'is', null)
        .where('person.erased_at', 'is', null)
        .where(inState(scheme, state, { company, today }))
        .executeTakeFirstOrThrow();
      of[state] = Number(row.people);
    }
    counted.set(scheme.id, of);
  }
  return counted;
}
