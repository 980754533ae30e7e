/** One examiner's check: found, saved as it is filled in, and read again. */
import { checkedSequence } from '#engine/compile/check-bundle.ts';
import { type CheckSheet, merged, sheetFrom, type SheetFault } from '#engine/exam/check-sheet.ts';
import { witnessPoints } from '#engine/exam/witness.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { inTurn } from '../companies/in-turn.ts';
import type { Db } from '../database/open-database.ts';
import type { Act } from '../people/member.ts';
import { basisOf, type BasisKey, basisText } from './basis.ts';
import { dropTakenBack } from './photos.ts';
import { isOver } from './takings.ts';

export type Check = BasisKey & {
  readonly id: string;
  readonly application: string;
  readonly candidate: string;
  readonly candidateName: string;
  readonly taking: string;
  readonly place: number;
  readonly examiner: string;
  readonly examinerName: string;
  readonly begunAt: string;
  readonly savedAt: string;
  readonly signedAt: string | null;
  readonly outcome: string | null;
  readonly sheet: CheckSheet;
};

const rows = (db: Db, company: string) =>
  db
    .selectFrom('hands_on_check')
    .innerJoin('person as candidate', 'candidate.id', 'hands_on_check.person_id')
    .innerJoin('person as examiner', 'examiner.id', 'hands_on_check.examiner_id')
    .select([
      'hands_on_check.id',
      'hands_on_check.application_id as application',
      'hands_on_check.person_id as candidate',
      'candidate.name as candidateName',
      'scheme',
      'part',
      'content_revision',
      'taking_id as taking',
      'place',
      'examiner_id as examiner',
      'examiner.name as examinerName',
      'begun_at as begunAt',
      'saved_at as savedAt',
      'signed_at as signedAt',
      'outcome',
      'filled',
    ])
    .where('hands_on_check.company_id', '=', company);

type Row = Awaited<ReturnType<ReturnType<typeof rows>['execute']>>[number];

const checkFrom = ({ filled, ...row }: Row): Check => ({
  ...row,
  sheet: JSON.parse(filled) as CheckSheet,
});

/** Undefined for one of another company, or that is not there. */
export async function check(db: Db, company: string, id: string): Promise<Check | undefined> {
  const row = await rows(db, company).where('hands_on_check.id', '=', id).executeTakeFirst();
  return row && checkFrom(row);
}

/** The same, for its examiner alone. */
export async function ownCheck(db: Db, { by }: Act, id: string): Promise<Check | undefined> {
  const found = await check(db, by.company, id);
  return found?.examiner === by.person ? found : undefined;
}

/** Those of a taking that are signed, by place. */
export async function signedOf(db: Db, company: string, taking: string): Promise<readonly Check[]> {
  const found = await rows(db, company)
    .where('taking_id', '=', taking)
    .where('signed_at', 'is not', null)
    .orderBy('place')
    .execute();
  return found.map(checkFrom);
}

/** Those that an examiner has under way, the latest first. */
export async function underWay(db: Db, { by }: Act): Promise<readonly Check[]> {
  const found = await rows(db, by.company)
    .where('examiner_id', '=', by.person)
    .where('signed_at', 'is', null)
    .where('taking_id', 'not in', db.selectFrom('part_result').select('id'))
    .orderBy('begun_at', 'desc')
    .limit(50)
    .execute();
  return found.map(checkFrom);
}

/** What a browser needs to go on with it where there is no signal. */
export async function toTakeAlong(db: Db, found: Check) {
  return {
    check: found,
    bundle: await basisText(db, found),
    isOver: await isOver(db, found.taking),
  };
}

/** `SIGNED`: it never changes again. */
export type SaveFault = { readonly code: 'ABSENT' | 'SIGNED' } | SheetFault;

/** The sheet as it was sent, right in its form. */
export async function sentSheet(
  db: Db,
  found: Check,
  sent: unknown,
  at: string,
): Promise<Result<CheckSheet, readonly SheetFault[]>> {
  const points = witnessPoints(checkedSequence(await basisOf(db, found)));
  return sheetFrom(sent, new Set(points.map(({ id }) => id)), at);
}

/** Merges what was filled in since, wherever it was, and tells what stands there now. */
export const save = (
  db: Db,
  act: Act,
  { id, sheet }: { readonly id: string; readonly sheet: unknown },
): Promise<Result<CheckSheet, readonly SaveFault[]>> =>
  inTurn(db, act.by.company, async (trx) => {
    const found = await ownCheck(trx, act, id);
    if (!found) return fault([{ code: 'ABSENT' as const }]);
    if (found.signedAt !== null) return fault([{ code: 'SIGNED' as const }]);
    const sent = await sentSheet(trx, found, sheet, act.at);
    if (!sent.ok) return sent;
    const all = merged(found.sheet, sent.value);
    await trx
      .updateTable('hands_on_check')
      .set({ filled: JSON.stringify(all), saved_at: act.at })
      .where('id', '=', id)
      .execute();
    await dropTakenBack(trx, id, all);
    return ok(all);
  });
