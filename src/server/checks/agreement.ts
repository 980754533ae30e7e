/**
 * How far examiners who watched the same work agree, beyond what their habits would give by chance: Cohen's
 * kappa of their points, by pair, over all, and by year. Points of one check are not independent of one
 * another, so that its error is rather too small; and of few checks nothing is said.
 */
import { cohenKappa } from '#engine/statistics/kappa.ts';
import type { Db } from '../database/open-database.ts';

/** The fewest that a figure is given for, each included: this project's own choice. */
export const fewestChecks = 3;
export const fewestPoints = 30;

export type TooFew = 'too-few-checks' | 'too-few-points' | 'no-room-for-disagreement';

/** Rows are the first examiner's right and wrong, columns the second's. */
type Table = readonly (readonly number[])[];

export type Agreement = {
  readonly checks: number;
  readonly points: number;
  /** Of the points, those that both judged alike. */
  readonly alike: number;
  readonly kappa: { readonly kappa: number; readonly error: number } | { readonly few: TooFew };
};

export type PairAgreement = Agreement & { readonly names: readonly string[] };
export type YearAgreement = Agreement & { readonly year: string };

export type Agreements = {
  readonly all: Agreement;
  readonly pairs: readonly PairAgreement[];
  readonly years: readonly YearAgreement[];
};

const turned = (table: Table): Table => table.map((row, i) => row.map((_, j) => table[j]![i]!));

const cell = (table: Table, i: number, j: number): number => table[i]?.[j] ?? 0;

function agreementOf(tables: readonly Table[]): Agreement {
  const sum = [0, 1].map((i) =>
    [0, 1].map((j) => tables.reduce((all, table) => all + cell(table, i, j), 0)),
  );
  const points = sum.flat().reduce((all, one) => all + one, 0);
  const checks = tables.length;
  return {
    checks,
    points,
    alike: cell(sum, 0, 0) + cell(sum, 1, 1),
    kappa: kappaOf(sum, checks, points),
  };
}

function kappaOf(sum: Table, checks: number, points: number): Agreement['kappa'] {
  if (checks < fewestChecks) return { few: 'too-few-checks' };
  if (points < fewestPoints) return { few: 'too-few-points' };
  const found = cohenKappa(sum);
  if (typeof found === 'string') return { few: 'no-room-for-disagreement' };
  return { kappa: found.kappa, error: found.error };
}

export async function agreement(db: Db, company: string): Promise<Agreements> {
  const rows = await db
    .selectFrom('part_result')
    .select(['on_date', 'examiners', 'detail'])
    .where('company_id', '=', company)
    .where('agreement', 'is not', null)
    .orderBy('on_date')
    .execute();
  const shown = rows.flatMap(({ on_date, examiners, detail }) => {
    const { counts } = JSON.parse(detail) as { readonly counts?: Table };
    const [first = '', second = ''] = JSON.parse(examiners) as readonly string[];
    return counts ? [{ year: on_date.slice(0, 4), first, second, counts }] : [];
  });
  const people = await db
    .selectFrom('person')
    .select(['id', 'name'])
    .where('id', 'in', ['', ...shown.flatMap(({ first, second }) => [first, second])])
    .execute();
  const names = new Map(people.map(({ id, name }) => [id, name]));
  // Of a pair, whoever's identifier comes first is the first of their table.
  const byPair = Map.groupBy(shown, ({ first, second }) => [first, second].toSorted().join(' '));
  const byYear = Map.groupBy(shown, ({ year }) => year);
  return {
    all: agreementOf(shown.map(({ counts }) => counts)),
    pairs: [...byPair].map(([pair, some]) => ({
      names: pair.split(' ').map((id) => names.get(id) ?? ''),
      ...agreementOf(
        some.map(({ first, second, counts }) => (first <= second ? counts : turned(counts))),
      ),
    })),
    years: [...byYear].map(([year, some]) => ({
      year,
      ...agreementOf(some.map(({ counts }) => counts)),
    })),
  };
}
