/**
 * What a candidate's device tells of their sitting, many of them in one transaction. The rows of the
 * sittings are held meanwhile, so that two tabs, two devices and two processes write one after another;
 * each is taken or refused by `accept`, on the state that all before it made.
 */
import { accept, type Accepted, type Refusal } from '#engine/exam/accept.ts';
import type { Sitting } from '#engine/exam/sitting.ts';
import type { Happening } from '#engine/exam/sitting-event.ts';
import { fault, type Result } from '#engine/result.ts';
import { Gathered } from '../database/gathered.ts';
import type { Kind } from '../database/kind.ts';
import type { Database, Db } from '../database/open-database.ts';
import { type Known, sittingsBy, writeNew } from './sitting-log.ts';

/** What a candidate can make happen in their own sitting. */
export type OwnHappening = Extract<
  Happening,
  {
    readonly kind:
      'page-shown' | 'answered' | 'left-page' | 'came-back' | 'handed-in' | 'time-ran-out';
  }
>;

export type Told = {
  readonly sitting: string;
  readonly company: string;
  /** Whoever tells it: only of a sitting of their own. */
  readonly person: string;
  readonly happening: OwnHappening;
  /** When it came, as an instant in ISO 8601. */
  readonly at: string;
};

export type Taking = Result<Accepted, Refusal>;

export async function take(
  trx: Db,
  kind: Kind,
  batch: readonly Told[],
): Promise<readonly Taking[]> {
  const known = await sittingsBy(
    trx,
    batch.map(({ sitting }) => sitting),
    kind,
  );
  const after = new Map<string, Sitting>();
  const takings = batch.map((told): Taking => {
    const found = known.get(told.sitting);
    if (!found || !isTheirs(found, told)) return fault('of-another-sitting');
    const before = after.get(told.sitting) ?? found.sitting;
    const happening = { ...told.happening, sitting: told.sitting };
    const taking = accept(before, happening, Date.parse(told.at));
    if (taking.ok) after.set(told.sitting, taking.value.sitting);
    return taking;
  });
  await writeNew(
    trx,
    [...after].map(([id, sitting]) => ({ before: known.get(id)!, after: sitting })),
  );
  return takings;
}

const isTheirs = ({ row }: Known, { person, company }: Told): boolean =>
  row.person_id === person && row.company_id === company;

/** What was told, on its way into the records. */
export type Ledger = Gathered<Told, Taking>;

export const openLedger = (database: Database): Ledger => new Gathered(database, take);
