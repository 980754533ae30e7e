/**
 * The list of a company's people, a page at a time. A page starts after a person and not at a count, so
 * that the last page costs as much as the first, and nobody is left out or shown twice when others are
 * added meanwhile. Words that are looked for are beginnings of words in the name or number: an index is
 * walked in order until the page is full, at worst over the whole company.
 */
import { sql } from 'kysely';
import { type Role, rolesFrom } from '../access/roles.ts';
import type { Db } from '../database/open-database.ts';
import { type Neighbours, pageOf, wordBegins, wordsIn } from './listed.ts';

export const pageLength = 50;

export type Asked = {
  readonly search?: string | undefined;
  /** A crew, or `none` for those in no crew. */
  readonly crew?: string | undefined;
  readonly who?: 'here' | 'gone';
  /** The person that the page comes after, or before. */
  readonly after?: string | undefined;
  readonly before?: string | undefined;
  /** How many at most; a page has 50 unless more are wanted at once. */
  readonly most?: number;
};

export type PersonRow = {
  readonly id: string;
  readonly name: string;
  readonly number: string | null;
  readonly crew: string | null;
  readonly crewName: string | null;
  readonly roles: readonly Role[];
  readonly language: string | null;
  readonly email: string | null;
  readonly leftAt: string | null;
  readonly canSignIn: boolean;
};

export type Page = Neighbours & { readonly people: readonly PersonRow[] };

const columns = [
  'person.id',
  'person.name',
  'person.number',
  'person.crew_id as crew',
  'crew.name as crewName',
  'person.roles',
  'person.language',
  'person.email',
  'person.left_at as leftAt',
  'person.login_id as login',
] as const;

type Row = Omit<PersonRow, 'roles' | 'canSignIn'> & {
  readonly roles: string;
  readonly login: string | null;
};

const rowFrom = ({ roles, login, ...row }: Row): PersonRow => ({
  ...row,
  roles: rolesFrom(roles),
  canSignIn: login !== null,
});

const withCrews = (db: Db) =>
  db.selectFrom('person').leftJoin('crew', 'crew.id', 'person.crew_id').select(columns);

/** Somebody of a company, also one who has left; undefined where there is nobody. */
export async function one(db: Db, company: string, person: string): Promise<PersonRow | undefined> {
  const row = await withCrews(db)
    .where('person.company_id', '=', company)
    .where('person.id', '=', person)
    .where('person.erased_at', 'is', null)
    .executeTakeFirst();
  return row && rowFrom(row);
}

/** The query of a page, one person longer than the page. */
export function pageQuery(
  db: Db,
  company: string,
  { search = '', crew, who = 'here', most = pageLength }: Asked,
  from?: { readonly search: string; readonly id: string; readonly isBackwards: boolean },
) {
  const direction = from?.isBackwards ? 'desc' : 'asc';
  let query = withCrews(db)
    .where('person.company_id', '=', company)
    .where('person.left_at', who === 'here' ? 'is' : 'is not', null)
    .where('person.erased_at', 'is', null)
    .orderBy('person.search', direction)
    .orderBy('person.id', direction)
    .limit(most + 1);
  if (crew === 'none') query = query.where('person.crew_id', 'is', null);
  else if (crew) query = query.where('person.crew_id', '=', crew);
  for (const word of wordsIn(search)) query = query.where(wordBegins('person.search', word));
  if (from) {
    const side = sql.raw(from.isBackwards ? '<' : '>');
    query = query.where(
      sql<boolean>`(person.search, person.id) ${side} (${from.search}, ${from.id})`,
    );
  }
  return query;
}

export async function page(db: Db, company: string, asked: Asked): Promise<Page> {
  const { most = pageLength } = asked;
  const isBackwards = asked.before !== undefined;
  const neighbour = asked.before ?? asked.after;
  const place =
    neighbour === undefined
      ? undefined
      : await db
          .selectFrom('person')
          .select(['search', 'id'])
          .where('company_id', '=', company)
          .where('id', '=', neighbour)
          .executeTakeFirst();
  const from = place && { ...place, isBackwards };
  const rows = await pageQuery(db, company, asked, from).execute();
  const { shown, ...neighbours } = pageOf(rows, most, from);
  return { people: shown.map(rowFrom), ...neighbours };
}

/** How many are with a company. */
export async function count(db: Db, company: string): Promise<number> {
  const { people } = await db
    .selectFrom('person')
    .select(({ fn }) => fn.countAll().as('people'))
    .where('company_id', '=', company)
    .where('left_at', 'is', null)
    .executeTakeFirstOrThrow();
  return Number(people);
}
