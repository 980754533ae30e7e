import type { IsoDate } from '#engine/calendar.ts';
import type { Scope } from '#engine/certificate/scope.ts';
import type { Db } from '../database/open-database.ts';

/** A part that was passed, by its id, and on which day. */
export type PassedPart = { readonly part: string; readonly on: IsoDate };

export type Issue = {
  readonly number: number;
  /** Of the holder, as it was then. */
  readonly name: string;
  readonly scope: Scope;
  readonly evidence: readonly PassedPart[];
  readonly credential: string | null;
  readonly madeAt: string;
};

/** What was passed towards the certificate that a ruling grants, the last of each part. */
export async function passedParts(trx: Db, ruling: string | null): Promise<readonly PassedPart[]> {
  if (ruling === null) return [];
  const rows = await trx
    .selectFrom('part_result')
    .innerJoin('ruling', 'ruling.application_id', 'part_result.application_id')
    .select(['part_result.part', 'part_result.on_date as on'])
    .where('ruling.id', '=', ruling)
    .where('part_result.result', '=', 'passed')
    .where('part_result.released_at', 'is not', null)
    .orderBy('part_result.on_date')
    .execute();
  const last = new Map(rows.map(({ part, on }) => [part, on as IsoDate]));
  return [...last].map(([part, on]) => ({ part, on }));
}

/** Puts a name and a scope on paper anew, under the next number. */
export async function addIssue(
  trx: Db,
  at: { readonly company: string; readonly certificate: string; readonly at: string },
  { number, name, scope, evidence }: Pick<Issue, 'number' | 'name' | 'scope' | 'evidence'>,
): Promise<void> {
  await trx
    .insertInto('certificate_issue')
    .values({
      certificate_id: at.certificate,
      number,
      company_id: at.company,
      name,
      scope: JSON.stringify(scope),
      evidence: JSON.stringify(evidence),
      made_at: at.at,
    })
    .execute();
}

/** The one that counts; undefined where the holder was erased. */
export async function lastIssue(db: Db, certificate: string): Promise<Issue | undefined> {
  const row = await db
    .selectFrom('certificate_issue')
    .select(['number', 'name', 'scope', 'evidence', 'credential', 'made_at as madeAt'])
    .where('certificate_id', '=', certificate)
    .orderBy('number', 'desc')
    .limit(1)
    .executeTakeFirst();
  return (
    row && {
      ...row,
      scope: JSON.parse(row.scope) as Scope,
      evidence: JSON.parse(row.evidence) as readonly PassedPart[],
    }
  );
}
