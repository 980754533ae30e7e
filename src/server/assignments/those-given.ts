/**
 * How each person stands with an assignment. What a person has done is summed from the rows of progress, at
 * most one for each work, and never from attempts: a page reads those of the people on it, the counts those
 * of everybody it was given to.
 */
import { sql } from 'kysely';
import { besideIndex } from '../database/beside-index.ts';
import type { Db } from '../database/open-database.ts';
import type { OneAssignment } from './assignment-list.ts';
import { isStuck } from './stuck.ts';

export const peopleOnAPage = 50;

export const states = ['passed', 'stuck', 'asked again', 'started', 'not started'] as const;
export type State = (typeof states)[number];

/** `late`: not passed when it was due, whatever else is true of them. */
export const filters = [...states, 'late'] as const;
export type Filter = (typeof filters)[number];

export type Standing = {
  readonly person: string;
  readonly name: string;
  readonly crewName: string | null;
  readonly state: State;
  readonly isLate: boolean;
  readonly tries: number;
  /** Of the works. */
  readonly passed: number;
  readonly lastAt: string | null;
};

type About = Pick<OneAssignment, 'id' | 'due' | 'works' | 'crews' | 'persons'>;

const standingsQuery = (db: Db, company: string, { id, works, crews, persons }: About) =>
  db
    .selectFrom('person')
    .innerJoin('assignment', (join) => join.on('assignment.id', '=', id))
    .leftJoin('crew', 'crew.id', 'person.crew_id')
    .leftJoin('progress', (join) =>
      join.onRef('progress.person_id', '=', 'person.id').on(
        'progress.work_id',
        'in',
        works.map((work) => work.id),
      ),
    )
    .select(({ fn }) => [
      'person.id as person',
      'person.name',
      'person.search',
      'crew.name as crewName',
      fn.count('progress.passed_at').as('passed'),
      fn.coalesce(fn.sum('progress.tries'), sql<number>`0`).as('tries'),
      fn.coalesce(fn.max(isStuck), sql<number>`0`).as('stuck'),
      sql<number>`coalesce(max(case when progress.asked_again_at is not null
        and progress.passed_at is null then 1 else 0 end), 0)`.as('again'),
      fn.max('progress.last_at').as('lastAt'),
    ])
    .where(besideIndex('person.company_id'), '=', company)
    .where('person.left_at', 'is', null)
    // Each by an index of its own: together they would be looked for among all of the company.
    .where('person.id', 'in', (eb) =>
      eb
        .selectFrom('person as inCrew')
        .select('inCrew.id')
        .where('inCrew.crew_id', 'in', ['', ...crews.map((crew) => crew.id)])
        .union(
          eb
            .selectFrom('person as named')
            .select('named.id')
            .where('named.id', 'in', ['', ...persons.map((person) => person.id)]),
        ),
    )
    .groupBy(['person.id', 'person.name', 'person.search', 'crew.name']);

/** What tells each state in the sums of a person; the first that holds is theirs. */
const isState = (works: number) => {
  const all = sql.lit(works);
  return {
    passed: sql<boolean>`passed >= ${all}`,
    stuck: sql<boolean>`passed < ${all} and stuck = 1`,
    'asked again': sql<boolean>`passed < ${all} and stuck = 0 and again = 1`,
    started: sql<boolean>`passed < ${all} and stuck = 0 and again = 0 and tries > 0`,
    'not started': sql<boolean>`tries = 0`,
  } as const satisfies Readonly<Record<State, unknown>>;
};

const isPastDue = ({ due }: About, at: string): boolean => due !== null && due < at;

export type Counts = Readonly<Record<Filter | 'all', number>>;

/** How many are in each state. */
export async function counts(db: Db, company: string, about: About, at: string): Promise<Counts> {
  const is = isState(about.works.length);
  const row = await db
    .selectFrom(standingsQuery(db, company, about).as('standing'))
    .select(({ fn }) => [
      fn.countAll().as('all'),
      ...states.map((state) =>
        fn
          .coalesce(fn.sum(sql<number>`case when ${is[state]} then 1 else 0 end`), sql`0`)
          .as(state),
      ),
    ])
    .executeTakeFirstOrThrow();
  const number = (name: State | 'all') => Number(row[name]);
  const byState = Object.fromEntries(states.map((state) => [state, number(state)]));
  const late = isPastDue(about, at) ? number('all') - number('passed') : 0;
  return { ...(byState as Record<State, number>), late, all: number('all') };
}

export type StandingPage = {
  readonly people: readonly Standing[];
  /** Whom to ask for after, for the next page; undefined on the last. */
  readonly next?: string;
};

type Asked = { readonly at: string; readonly only?: Filter; readonly after?: string };

/** By name, a page from after a person. */
export async function page(
  db: Db,
  company: string,
  about: About,
  { at, only, after }: Asked,
): Promise<StandingPage> {
  const isDue = isPastDue(about, at);
  if (only === 'late' && !isDue) return { people: [] };
  const is = isState(about.works.length);
  let query = db
    .selectFrom(standingsQuery(db, company, about).as('standing'))
    .selectAll()
    .select(
      sql<State>`case ${sql.join(
        states.map((state) => sql`when ${is[state]} then ${sql.lit(state)}`),
        sql` `,
      )} end`.as('state'),
    )
    .orderBy('search')
    .orderBy('person')
    .limit(peopleOnAPage + 1);
  if (only === 'late') query = query.where(sql<boolean>`not (${is.passed})`);
  else if (only) query = query.where(is[only]);
  const from = after === undefined ? undefined : await placeOf(db, company, after);
  if (from) query = query.where(sql<boolean>`(search, person) > (${from.search}, ${from.id})`);
  const rows = await query.execute();
  const people = rows.slice(0, peopleOnAPage).map((row): Standing => ({
    person: row.person,
    name: row.name,
    crewName: row.crewName,
    state: row.state,
    isLate: isDue && row.state !== 'passed',
    tries: Number(row.tries),
    passed: Number(row.passed),
    lastAt: row.lastAt,
  }));
  const last = people.at(-1);
  return { people, ...(rows.length > peopleOnAPage && last ? { next: last.person } : {}) };
}

const placeOf = (db: Db, company: string, person: string) =>
  db
    .selectFrom('person')
    .select(['search', 'id'])
    .where('company_id', '=', company)
    .where('id', '=', person)
    .executeTakeFirst();
