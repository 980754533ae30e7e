/** What a candidate sees of a sitting of their own: where it stands, and one item at a time. */
import type { Content } from '#engine/compile/content.ts';
import { nextSequence } from '#engine/exam/sitting.ts';
import type { Text } from '#engine/text.ts';
import type { Db } from '../database/open-database.ts';
import type { Act, Member } from '../people/member.ts';
import { itemKey } from './item-key.ts';
import { partOf, type SittingDetail } from './marked-sitting.ts';
import { keptPlan } from './plan.ts';
import { type ShownItem, shownItem } from './shown-item.ts';
import { type Known, sittingBy } from './sitting-log.ts';
import { type Clock, clockOf } from './told.ts';

export type OwnSitting = {
  readonly id: string;
  readonly scheme: string;
  readonly part: { readonly title: Text; readonly kind: string } | undefined;
  readonly allowed: number;
  readonly clock: Clock;
  /** In the order in which they are asked; nothing before it is begun. */
  readonly places: readonly { readonly key: string; readonly isAnswered: boolean }[];
  readonly count: number;
  /** What a tab numbers its next answer with. */
  readonly sequence: number;
};

async function ownKnown(db: Db, by: Member, id: string): Promise<Known | undefined> {
  const known = await sittingBy(db, by.company, id);
  return known?.row.person_id === by.person ? known : undefined;
}

export async function ownSitting(
  db: Db,
  content: Content,
  { by, at }: Act,
  id: string,
): Promise<OwnSitting | undefined> {
  const known = await ownKnown(db, by, id);
  if (!known) return undefined;
  const { row, sitting } = known;
  const plan = keptPlan(row);
  const part = partOf(content, known);
  const isBegun = sitting.phase !== 'waiting';
  return {
    id,
    scheme: row.scheme,
    part: part && { title: part.title, kind: part.kind },
    allowed: plan.allowed,
    clock: clockOf(sitting, Date.parse(at)),
    places: isBegun
      ? plan.items.map((item) => ({
          key: itemKey(plan, item),
          isAnswered: sitting.counts.has(item),
        }))
      : [],
    count: plan.items.length,
    sequence: nextSequence(sitting),
  };
}

export type OwnSittingRow = {
  readonly id: string;
  readonly scheme: string;
  readonly part: string;
  readonly phase: string;
  readonly madeAt: string;
};

/** How many are looked at for those to show. */
const latest = 10;

/** Those under way and the last that were released, the newest first. */
export const ownSittings = (db: Db, { company, person }: Member): Promise<OwnSittingRow[]> =>
  db
    .selectFrom('sitting')
    .select(['id', 'scheme', 'part', 'phase', 'made_at as madeAt'])
    .where('company_id', '=', company)
    .where('person_id', '=', person)
    .where('phase', '!=', 'voided')
    .orderBy('made_at', 'desc')
    .limit(latest)
    .execute();

export type OwnResult = {
  readonly result: string;
  readonly share: number | null;
  readonly detail: SittingDetail;
};

/** What came of it, once it was released; what was voided has none. */
export async function ownResult(
  db: Db,
  { company, person }: Member,
  id: string,
): Promise<OwnResult | undefined> {
  const row = await db
    .selectFrom('part_result')
    .select(['result', 'share', 'detail'])
    .where('id', '=', id)
    .where('company_id', '=', company)
    .where('person_id', '=', person)
    .where('released_at', 'is not', null)
    .where('result', '!=', 'void')
    .executeTakeFirst();
  return row && { ...row, detail: JSON.parse(row.detail) as SittingDetail };
}

export type OwnItem = {
  readonly place: number;
  readonly key: string;
  /** Nothing where the content no longer has it. */
  readonly shown: ShownItem | undefined;
  /** The answer that counts so far, as it was given. */
  readonly given: string | undefined;
};

/** The item at a place from 1, while it may be answered: nothing is shown before or after. */
export async function ownItem(
  db: Db,
  content: Content,
  { by, at }: Act,
  { id, place }: { readonly id: string; readonly place: number },
): Promise<OwnItem | undefined> {
  const known = await ownKnown(db, by, id);
  const { phase, isOver } = known
    ? clockOf(known.sitting, Date.parse(at))
    : { phase: '', isOver: true };
  if (!known || phase !== 'open' || isOver) return undefined;
  const plan = keptPlan(known.row);
  const item = plan.items[place - 1];
  if (item === undefined) return undefined;
  const key = itemKey(plan, item);
  const given = known.sitting.counts.get(item)?.value;
  return { place, key, shown: shownItem(content, plan, item, { key, given }), given };
}
