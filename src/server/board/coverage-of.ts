/** How many of a company hold each qualification over the year ahead, and who lapses when. */
import type { IsoDate } from '#engine/calendar.ts';
import { type Coverage, coverage } from '#engine/competence/coverage.ts';
import type { Scheme } from '#engine/exam/scheme.ts';
import type { Db } from '../database/open-database.ts';
import { speaks } from './in-state.ts';
import { dayFrom } from './records-of.ts';

/** Certificates that hold today, of people who are still there. */
const holding = (db: Db, company: string, today: string) =>
  db
    .selectFrom('certificate as c')
    .innerJoin('person', 'person.id', 'c.person_id')
    .where('c.company_id', '=', company)
    .where('c.state', '=', 'in-force')
    .where('c.valid_until', '>=', today)
    .where('person.left_at', 'is', null)
    .where('person.erased_at', 'is', null)
    .where(speaks);

/** By scheme. */
export async function coverageOf(
  db: Db,
  company: string,
  at: string,
  schemes: readonly Scheme[],
): Promise<ReadonlyMap<string, Coverage>> {
  const today = dayFrom(at);
  const rows = await holding(db, company, today)
    .select(({ fn }) => ['c.scheme', 'c.valid_until as until', fn.countAll().as('people')])
    .groupBy(['c.scheme', 'c.valid_until'])
    .execute();
  const ends = rows.map(({ scheme, until, people }) => ({
    scheme,
    until: dayFrom(until),
    people: Number(people),
  }));
  return new Map(
    schemes.map(({ id }) => [
      id as string,
      coverage(
        ends.filter(({ scheme }) => scheme === id),
        today,
      ),
    ]),
  );
}

export type Ending = {
  readonly id: string;
  readonly person: string;
  readonly name: string;
  readonly crewName: string | null;
  readonly scheme: string;
  /** The last day. */
  readonly until: string;
};

/** Whose certificates end from today through a day, the soonest first. */
export const endings = (
  db: Db,
  company: string,
  at: string,
  through: IsoDate,
  most: number,
): Promise<readonly Ending[]> =>
  holding(db, company, at.slice(0, 10))
    .leftJoin('crew', 'crew.id', 'person.crew_id')
    .select([
      'c.id',
      'c.scheme',
      'c.valid_until as until',
      'person.id as person',
      'person.name',
      'crew.name as crewName',
    ])
    .where('c.valid_until', '<=', through)
    .orderBy('c.valid_until')
    .orderBy('person.search')
    .orderBy('c.id')
    .limit(most)
    .execute();
