/**
 * A company's crews by name, a page at a time. A page starts after a crew and not at a count, along an index:
 * the last page costs as much as the first, and people are counted of the crews on it alone.
 */
import { sql } from 'kysely';
import type { CrewChoices, CrewName } from '#engine/record/crew-choices.ts';
import { textOf } from '../access/text-of.ts';
import type { Db } from '../database/open-database.ts';
import { type Neighbours, pageOf, wordBegins, wordsIn } from './listed.ts';

export const pageLength = 50;
/** As many as a form lists to choose from. */
export const choiceLength = 100;
/** More than any work is given to at once. */
const longestNamed = 500;

export type Crew = {
  readonly id: string;
  readonly name: string;
  readonly closedAt: string | null;
  /** How many are in it now. */
  readonly people: number;
};

export type CrewsAsked = {
  /** Beginnings of words in the name. */
  readonly search?: string | undefined;
  readonly which?: 'at work' | 'closed';
  /** The crew that the page comes after, or before. */
  readonly after?: string | undefined;
  readonly before?: string | undefined;
  readonly most?: number;
};

export type CrewPage = Neighbours & { readonly crews: readonly Crew[] };

function query(db: Db, company: string, { search = '', which = 'at work' }: CrewsAsked) {
  let rows = db
    .selectFrom('crew')
    .select(['id', 'name', 'closed_at as closedAt'])
    .where('company_id', '=', company)
    .where('closed_at', which === 'at work' ? 'is' : 'is not', null);
  for (const word of wordsIn(search)) rows = rows.where(wordBegins('folded_name', word));
  return rows;
}

/** The crews of the page and one more, from the neighbour on. */
async function rowsFrom(db: Db, company: string, asked: CrewsAsked, most: number) {
  const [side, direction] = asked.before ? (['<', 'desc'] as const) : (['>', 'asc'] as const);
  const neighbour = asked.before ?? asked.after;
  const place =
    neighbour === undefined
      ? undefined
      : await db
          .selectFrom('crew')
          .select(['folded_name', 'id'])
          .where('company_id', '=', company)
          .where('id', '=', neighbour)
          .executeTakeFirst();
  let rows = query(db, company, asked)
    .orderBy('folded_name', direction)
    .orderBy('id', direction)
    .limit(most + 1);
  if (place) {
    rows = rows.where(
      sql<boolean>`(folded_name, id) ${sql.raw(side)} (${place.folded_name}, ${place.id})`,
    );
  }
  const from = place && { isBackwards: asked.before !== undefined };
  return { rows: await rows.execute(), from };
}

export async function page(db: Db, company: string, asked: CrewsAsked = {}): Promise<CrewPage> {
  const { most = pageLength } = asked;
  const { rows, from } = await rowsFrom(db, company, asked, most);
  const { shown, ...neighbours } = pageOf(rows, most, from);
  return { crews: await counted(db, company, shown), ...neighbours };
}

export async function one(db: Db, company: string, id: string): Promise<Crew | undefined> {
  const crew = await db
    .selectFrom('crew')
    .select(['id', 'name', 'closed_at as closedAt'])
    .where('company_id', '=', company)
    .where('id', '=', id)
    .executeTakeFirst();
  return crew && (await counted(db, company, [crew]))[0];
}

async function counted(
  db: Db,
  company: string,
  crews: readonly Omit<Crew, 'people'>[],
): Promise<readonly Crew[]> {
  if (crews.length === 0) return [];
  const counts = await db
    .selectFrom('person')
    .select(({ fn }) => ['crew_id', fn.countAll().as('people')])
    .where('company_id', '=', company)
    .where('left_at', 'is', null)
    .where(
      'crew_id',
      'in',
      crews.map(({ id }) => id),
    )
    .groupBy('crew_id')
    .execute();
  const people = new Map(counts.map((row) => [row.crew_id, Number(row.people)]));
  return crews.map((crew) => ({ ...crew, people: people.get(crew.id) ?? 0 }));
}

/** The first of the crews at work by name, with those chosen before; `isMore` where others are left out. */
export async function choices(
  db: Db,
  company: string,
  chosen: readonly string[] = [],
  most = choiceLength,
): Promise<{ readonly crews: readonly CrewName[]; readonly isMore: boolean }> {
  const { rows } = await rowsFrom(db, company, {}, most);
  const first = rows.slice(0, most).map(({ id, name }) => ({ id, name }));
  const isMore = rows.length > most;
  const others = chosen.filter((id) => !first.some((crew) => crew.id === id));
  return { crews: [...(isMore ? await named(db, company, others) : []), ...first], isMore };
}

/** Those chosen before and, where there are more than a form lists, those of a name that is looked for. */
export async function found(
  db: Db,
  company: string,
  search: string,
  chosen: readonly string[],
  most: number,
): Promise<Awaited<ReturnType<typeof choices>>> {
  const all = await choices(db, company, chosen);
  if (!all.isMore) return all;
  const { rows } = await rowsFrom(db, company, { search }, most);
  const kept = await named(db, company, chosen);
  const others = rows.slice(0, most).filter(({ id }) => !chosen.includes(id));
  return { crews: [...kept, ...others.map(({ id, name }) => ({ id, name }))], isMore: true };
}

/** How many a form lists of those looked for: more, and the name is not yet narrow enough to choose by. */
export const foundLength = 20;

/**
 * What a form lists to choose a crew from: those of the name that was looked for in it, where more are at work
 * than it lists; the first of them before. Asks at most four times, however many crews there are.
 */
export async function forForm(
  db: Db,
  company: string,
  given: FormData | URLSearchParams,
  chosen: readonly string[] = [],
): Promise<CrewChoices> {
  const search = textOf(given, 'crew-search').trim();
  const all = await choices(db, company, chosen);
  if (!all.isMore || search === '') return { ...all, search, found: 0, isCut: false };
  const { rows } = await rowsFrom(db, company, { search }, foundLength);
  const those = rows.slice(0, foundLength).map(({ id, name }) => ({ id, name }));
  const ids = new Set(those.map(({ id }) => id));
  const kept = await named(
    db,
    company,
    chosen.filter((id) => !ids.has(id)),
  );
  const isCut = rows.length > foundLength;
  return { crews: [...kept, ...those], isMore: true, search, found: those.length, isCut };
}

/** Those of some crews that are at work, by name. */
export async function named(
  db: Db,
  company: string,
  ids: readonly string[],
): Promise<readonly CrewName[]> {
  if (ids.length === 0) return [];
  return db
    .selectFrom('crew')
    .select(['id', 'name'])
    .where('company_id', '=', company)
    .where('closed_at', 'is', null)
    .where('id', 'in', ids.slice(0, longestNamed))
    .orderBy('folded_name')
    .execute();
}
