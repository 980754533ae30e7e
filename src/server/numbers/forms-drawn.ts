/**
 * How alike the forms of a part are in how hard they are expected to be: of all that were ever drawn, but
 * for renewals that ask other topics on purpose.
 */
import { spreadOver, type SpreadOverForms } from '#engine/exam/spread.ts';
import type { Db } from '../database/open-database.ts';
import { keptPlan } from '../exams/plan.ts';
import type { PartKey } from './answers.ts';

export type FormsDrawn = SpreadOverForms & {
  /** So many did not come as near to the bank as is asked for. */
  readonly unmatched: number;
  /** Drawn before it was kept how hard a form is expected to be. */
  readonly unknown: number;
};

/** Undefined where no form was drawn of which it is known. */
export async function formsDrawn(
  db: Db,
  { company, scheme, part }: PartKey,
): Promise<FormsDrawn | undefined> {
  const rows = await db
    .selectFrom('sitting')
    .select('plan')
    .where('company_id', '=', company)
    .where('scheme', '=', scheme)
    .where('part', '=', part)
    .where('kind', '=', 'written')
    .execute();
  const plans = rows.map(keptPlan).filter(({ asks }) => asks === undefined);
  const matches = plans.flatMap(({ match }) => match ?? []);
  if (matches.length === 0) return undefined;
  return {
    ...spreadOver(matches),
    unmatched: matches.filter(({ isMatched }) => !isMatched).length,
    unknown: plans.length - matches.length,
  };
}
