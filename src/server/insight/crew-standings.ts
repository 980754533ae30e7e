/** Who is in a crew, and what each has practised: read from the standings, never from the attempts. */
import type { Db } from '../database/open-database.ts';

/** Of a larger crew the first by name are shown and counted; the screen says so. */
export const mostPeople = 200;

type Practice = {
  readonly kind: string;
  readonly about: string;
  readonly attempts: number;
  readonly best: number;
  readonly lastAt: string;
};

type CrewPerson = {
  readonly id: string;
  readonly name: string;
  readonly practised: readonly Practice[];
};

export type CrewStandings = {
  readonly id: string;
  readonly name: string;
  readonly isClosed: boolean;
  readonly people: readonly CrewPerson[];
  readonly isMore: boolean;
};

/** Those who are in the crew now, by name. */
const peopleOf = (db: Db, company: string, crew: string) =>
  db
    .selectFrom('person')
    .where('person.company_id', '=', company)
    .where('person.crew_id', '=', crew)
    .where('person.left_at', 'is', null)
    .orderBy('person.search')
    .orderBy('person.id');

/** Undefined where the company has no such crew. Three queries, whatever the size of the crew. */
export async function crewStandings(
  db: Db,
  company: string,
  crew: string,
): Promise<CrewStandings | undefined> {
  const found = await db
    .selectFrom('crew')
    .select(['id', 'name', 'closed_at'])
    .where('company_id', '=', company)
    .where('id', '=', crew)
    .executeTakeFirst();
  if (!found) return undefined;
  const people = await peopleOf(db, company, crew)
    .select(['person.id', 'person.name'])
    .limit(mostPeople + 1)
    .execute();
  const shown = people.slice(0, mostPeople);
  const rows =
    shown.length === 0
      ? []
      : await db
          .selectFrom('standing')
          .select(['person_id', 'kind', 'about', 'attempts', 'best', 'last_at as lastAt'])
          .where('person_id', 'in', idsOf(shown))
          .orderBy('last_at', 'desc')
          .orderBy('about')
          .execute();
  const practised = Map.groupBy(rows, ({ person_id }) => person_id);
  return {
    id: found.id,
    name: found.name,
    isClosed: found.closed_at !== null,
    people: shown.map(({ id, name }) => ({
      id,
      name,
      practised: (practised.get(id) ?? []).map(({ person_id: _, ...practice }) => practice),
    })),
    isMore: people.length > mostPeople,
  };
}

const idsOf = (people: readonly { readonly id: string }[]): readonly string[] =>
  people.map(({ id }) => id);

/** The stored sums of those people, in one method and in all families of problems. */
export async function talliesOf(
  db: Db,
  { people }: Pick<CrewStandings, 'people'>,
  method: string | undefined,
): Promise<readonly { person: string; kind: string; about: string; tally: string }[]> {
  if (people.length === 0) return [];
  return db
    .selectFrom('standing')
    .select(['person_id as person', 'kind', 'about', 'tally'])
    .where('person_id', 'in', idsOf(people))
    .where((eb) =>
      eb.or([
        eb('kind', '=', 'takeoff'),
        ...(method === undefined
          ? []
          : [eb.and([eb('kind', '=', 'mockup'), eb('about', '=', method)])]),
      ]),
    )
    .orderBy('person_id')
    .orderBy('about')
    .execute();
}
