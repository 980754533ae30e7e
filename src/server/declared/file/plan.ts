/**
 * What a file of certificates would write down: every row as new, there already, or faulty, before anything
 * is written. Takes time in proportion to rows, people and certificates.
 */
import type { ImportPlan, PlannedRow } from '#engine/record/import-plan.ts';
import type { Db } from '../../database/open-database.ts';
import { digestOf } from '../../import/looked-at.ts';
import { folded } from '../../people/folded.ts';
import type { DeclaredCellFault, DeclaredRow, DeclaredRows } from './read-rows.ts';
import { openWhose, type Whose } from './whose.ts';

export type PlanRow = Omit<DeclaredRow, 'who'> &
  PlannedRow<DeclaredCellFault> & { readonly person: string | null };

export type Plan = ImportPlan<PlanRow>;

type Written = {
  readonly title: string;
  readonly issuer: string;
  readonly number: string | null;
  readonly issuedOn: string;
  readonly scheme: string | null;
  readonly validUntil: string | null;
};

/** The paper that it is, however it is capitalised. */
const paperOf = (person: string, { title, issuer, number, issuedOn }: Written): string =>
  JSON.stringify([person, folded(title), folded(issuer), folded(number ?? ''), issuedOn]);

/** With all that is said of it. */
export const wholeOf = (person: string, one: Written): string =>
  JSON.stringify([paperOf(person, one), one.scheme, one.validUntil]);

async function keptIn(db: Db, company: string) {
  const rows = await db
    .selectFrom('declared_certificate')
    .select(['person_id as person', 'title', 'issuer', 'number', 'scheme'])
    .select(['issued_on as issuedOn', 'valid_until as validUntil'])
    .where('company_id', '=', company)
    .where('removed_at', 'is', null)
    .execute();
  return {
    papers: new Set(rows.map((row) => paperOf(row.person, row))),
    wholes: new Set(rows.map((row) => wholeOf(row.person, row))),
  };
}

export async function plan(
  db: Db,
  company: string,
  { rows, ignored }: DeclaredRows,
): Promise<Plan> {
  const whose = await openWhose(db, company);
  const kept = await keptIn(db, company);
  const [rowOfWhole, rowOfPaper] = [new Map<string, number>(), new Map<string, number>()];
  const planned = rows.map(({ who, ...row }): PlanRow => {
    const { person, faults } = about(whose, who, row);
    if (person === null || row.given === null || faults.length > 0) {
      return { ...row, person, faults, state: 'faulty' };
    }
    const [paper, whole] = [paperOf(person, row.given), wholeOf(person, row.given)];
    const isKept = kept.wholes.has(whole);
    const before = rowOfWhole.get(whole) ?? (isKept ? undefined : rowOfPaper.get(paper));
    rowOfWhole.set(whole, row.row);
    rowOfPaper.set(paper, row.row);
    const wrong: DeclaredCellFault | undefined =
      before !== undefined
        ? { column: 'title', code: 'TWICE', row: before }
        : !isKept && kept.papers.has(paper)
          ? { column: 'title', code: 'KEPT_OTHERWISE' }
          : undefined;
    if (wrong) return { ...row, person, faults: [wrong], state: 'faulty' };
    return { ...row, person, faults, state: isKept ? 'unchanged' : 'new' };
  });
  const does = ({ row, person, given, state, faults }: PlanRow) => [
    row,
    person,
    given,
    state,
    faults,
  ];
  return { rows: planned, ignored, digest: digestOf(planned, does) };
}

/** A name that some program has misread is not looked up: what is wrong with it is told already. */
function about(
  whose: Whose,
  who: DeclaredRow['who'],
  { faults }: Pick<DeclaredRow, 'faults'>,
): Pick<PlanRow, 'person' | 'faults'> {
  if (faults.some(({ column, code }) => code === 'MISREAD' && column !== null && column in who)) {
    return { person: null, faults };
  }
  const found = whose(who);
  return found.ok
    ? { person: found.value, faults }
    : { person: null, faults: [found.error, ...faults] };
}
