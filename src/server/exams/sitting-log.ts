/**
 * What happened in sittings, as it is kept. A sitting is never read from anywhere else: whatever process
 * asks folds the same events to the same state.
 */
import { type Sitting, sittingAfter } from '#engine/exam/sitting.ts';
import type { SittingEvent } from '#engine/exam/sitting-event.ts';
import type { Kind } from '../database/kind.ts';
import type { Db } from '../database/open-database.ts';
import { planOf } from './plan.ts';

export type SittingRow = {
  readonly id: string;
  readonly company_id: string;
  readonly application_id: string;
  readonly person_id: string;
  readonly scheme: string;
  readonly part: string;
  readonly kind: string;
  readonly plan: string;
  readonly content_revision: string;
  readonly code_digest: string | null;
  readonly code_by: string | null;
  readonly phase: string;
  readonly made_at: string;
};

/** A sitting with its row. */
export type Known = { readonly row: SittingRow; readonly sitting: Sitting };

type EventRow = {
  readonly sitting_id: string;
  readonly at: string;
  readonly detail: string;
};

const eventFrom = ({ sitting_id, at, detail }: EventRow): SittingEvent => ({
  ...(JSON.parse(detail) as SittingEvent),
  sitting: sitting_id,
  at: Date.parse(at),
});

/** By id. `lock` keeps every other process from writing to them until the transaction ends. */
export async function sittingsBy(
  db: Db,
  ids: readonly string[],
  lock?: Kind,
): Promise<ReadonlyMap<string, Known>> {
  if (ids.length === 0) return new Map();
  const wanted = db
    .selectFrom('sitting')
    .selectAll()
    .where('id', 'in', [...new Set(ids)])
    // Always in the same order, so that nobody waits in a circle.
    .orderBy('id');
  // SQLite has one writer at a time in any case.
  const rows = await (lock === 'postgres' ? wanted.forUpdate() : wanted).execute();
  const events = await db
    .selectFrom('sitting_event')
    .select(['sitting_id', 'at', 'detail'])
    .where('sitting_id', 'in', rows.map(({ id }) => id).concat(''))
    .orderBy('sitting_id')
    .orderBy('place')
    .execute();
  const logs = Map.groupBy(events, ({ sitting_id }) => sitting_id);
  return new Map(
    rows.map((row) => {
      const log = (logs.get(row.id) ?? []).map(eventFrom);
      return [row.id, { row, sitting: sittingAfter(planOf(row), log) }];
    }),
  );
}

/** A sitting without what happened in it; undefined for one that is not this person's own. */
export const ownRow = (
  db: Db,
  { company, person }: { readonly company: string; readonly person: string },
  id: string,
): Promise<SittingRow | undefined> =>
  db
    .selectFrom('sitting')
    .selectAll()
    .where('id', '=', id)
    .where('company_id', '=', company)
    .where('person_id', '=', person)
    .executeTakeFirst();

/** Undefined for one of another company, or that is not there. */
export async function sittingBy(
  db: Db,
  company: string,
  id: string,
  lock?: Kind,
): Promise<Known | undefined> {
  const known = (await sittingsBy(db, [id], lock)).get(id);
  return known?.row.company_id === company ? known : undefined;
}

/** Writes what is new in these sittings since they were read, and where it left each. */
export async function writeNew(
  trx: Db,
  changes: readonly { readonly before: Known; readonly after: Sitting }[],
): Promise<void> {
  const rows = changes.flatMap(({ before: { row, sitting }, after }) =>
    after.log
      .slice(sitting.log.length)
      .map((event, index) => eventRow(row, sitting.log.length + index + 1, event)),
  );
  for (let from = 0; from < rows.length; from += block) {
    await trx
      .insertInto('sitting_event')
      .values(rows.slice(from, from + block))
      .execute();
  }
  for (const { before, after } of changes) {
    if (before.row.phase === after.phase) continue;
    await trx
      .updateTable('sitting')
      .set({ phase: after.phase })
      .where('id', '=', before.row.id)
      .execute();
  }
}

/** Rows written by one statement: well under the number of values that either database takes. */
const block = 500;

const eventRow = (row: SittingRow, place: number, event: SittingEvent) => {
  const { sitting: _sitting, at, ...detail } = event;
  return {
    sitting_id: row.id,
    place,
    company_id: row.company_id,
    kind: event.kind,
    at: new Date(at).toISOString(),
    answer_id: event.kind === 'answered' ? event.answer.id : null,
    detail: JSON.stringify(detail),
  };
};
