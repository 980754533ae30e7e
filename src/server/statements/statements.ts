/** A company's examinations and certificates as statements, a page at a time in the order of their making. */
import { sql } from 'kysely';
import type { Scheme } from '#engine/exam/scheme.ts';
import { type Deed, type Statement, statementOf } from '#engine/statement/statement.ts';
import type { Text } from '#engine/text.ts';
import type { Db } from '../database/open-database.ts';

export const most = 500;

export type StatementPage = {
  readonly statements: readonly Statement[];
  /** What to ask for after, for the next page. */
  readonly next: string | undefined;
};

type Row = {
  readonly id: string;
  readonly person: string;
  readonly scheme: string;
  readonly part: string | null;
  readonly result: string;
  readonly share: number | null;
  readonly at: string;
};

/** Parts count once they are released, and one that was voided was never sat. */
const partsOf = (db: Db, company: string) =>
  db
    .selectFrom('part_result')
    .select([
      'id',
      'person_id as person',
      'scheme',
      sql<string | null>`part`.as('part'),
      'result',
      'share',
      sql<string>`released_at`.as('at'),
    ])
    .where('company_id', '=', company)
    .where('released_at', 'is not', null)
    .where('result', 'in', ['passed', 'failed']);

const certificatesOf = (db: Db, company: string) =>
  db
    .selectFrom('certificate')
    .select([
      'id',
      'person_id as person',
      'scheme',
      sql<string | null>`cast(null as text)`.as('part'),
      sql<string>`'completed'`.as('result'),
      sql<number | null>`cast(null as double precision)`.as('share'),
      'made_at as at',
    ])
    .where('company_id', '=', company);

/** `after` is an instant and an id with a slash between, as a page before gave it. */
export async function page(
  db: Db,
  company: string,
  home: string,
  schemes: readonly Scheme[],
  after = '',
): Promise<StatementPage> {
  const [at = '', id = ''] = after.split('/');
  const rows: readonly Row[] = await db
    .selectFrom(partsOf(db, company).unionAll(certificatesOf(db, company)).as('deed'))
    .selectAll()
    .where(sql<boolean>`(deed.at, deed.id) > (${at}, ${id})`)
    .orderBy('at')
    .orderBy('id')
    .limit(most + 1)
    .execute();
  const shown = rows.slice(0, most);
  const last = shown.at(-1);
  return {
    statements: shown.map((row) => statementOf(home, deedOf(row, schemes))),
    next: rows.length > most && last ? `${last.at}/${last.id}` : undefined,
  };
}

function deedOf(
  { id, person, scheme, part, result, share, at }: Row,
  schemes: readonly Scheme[],
): Deed {
  const found = schemes.find((one) => one.id === scheme);
  const plain: Text = { en: scheme, es: scheme };
  const name = part === null ? found?.title : found?.parts.find((one) => one.id === part)?.title;
  return {
    id,
    person,
    verb: result === 'passed' || result === 'failed' ? result : 'completed',
    activity: part === null ? `schemes/${scheme}` : `schemes/${scheme}/${part}`,
    name: name ?? plain,
    share: share ?? undefined,
    at,
  };
}
