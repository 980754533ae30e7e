/** What a candidate's browser sends of a sitting, and the one door through which it comes in. */
import { isFields } from '#engine/fields.ts';
import type { Content } from '#engine/compile/content.ts';
import type { Refusal } from '#engine/exam/accept.ts';
import { deadlineOf, isOver, type Sitting } from '#engine/exam/sitting.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { isUuid } from '#engine/uuid.ts';
import type { Db } from '../database/open-database.ts';
import type { Act } from '../people/member.ts';
import { isAnswerTo } from './answer-shape.ts';
import type { Ledger, OwnHappening } from './happenings.ts';
import { itemWith } from './item-key.ts';
import { keptPlan, type KeptPlan } from './plan.ts';
import { ownRow, sittingBy } from './sitting-log.ts';

export const mostAtOnce = 100;
const longestTab = 60;
const longestValue = 20_000;

/** `NOT_TOLD`: not in the form in which a browser tells it. `NOT_AN_ANSWER`: to this kind of question. */
export type TellingFault = Refusal | 'NOT_TOLD' | 'NOT_AN_ANSWER';

/** At its happening's place. What was refused is refused for good, but for `late`, while time can be given. */
export type Receipt =
  | { readonly id: string | undefined; readonly as: 'taken' | 'older' | 'double' }
  | { readonly id: string | undefined; readonly refused: TellingFault };

/** A body `{told: [...]}`: its parts as they came. */
export function toldList(body: unknown): Result<readonly unknown[], 'NOT_TOLD'> {
  const list = isFields(body) ? body['told'] : undefined;
  const isList = Array.isArray(list) && list.length <= mostAtOnce;
  return isList ? ok(list as readonly unknown[]) : fault('NOT_TOLD');
}

const isTab = (value: unknown): value is string =>
  typeof value === 'string' && value !== '' && value.length <= longestTab;

/** One of the list for this form, right in its shape. */
function happeningFrom(
  content: Content,
  plan: KeptPlan,
  one: unknown,
): Result<OwnHappening, TellingFault> {
  if (!isFields(one)) return fault('NOT_TOLD');
  const { kind, tab, key } = one;
  if (kind === 'handed-in' || kind === 'time-ran-out') return ok({ kind });
  if (!isTab(tab)) return fault('NOT_TOLD');
  if (kind === 'left-page' || kind === 'came-back') return ok({ kind, tab });
  const item = typeof key === 'string' ? itemWith(plan, key) : undefined;
  if (kind === 'page-shown') return item ? ok({ kind, item, tab }) : fault('not-on-this-form');
  if (kind !== 'answered') return fault('NOT_TOLD');
  const { id, sequence, value, clientTime } = one;
  if (!isUuid(id) || typeof sequence !== 'number' || typeof value !== 'string') {
    return fault('NOT_TOLD');
  }
  if (value.length > longestValue) return fault('NOT_TOLD');
  if (!item) return fault('not-on-this-form');
  if (!isAnswerTo(content, plan, item, value)) return fault('NOT_AN_ANSWER');
  const time = typeof clientTime === 'number' ? { clientTime } : {};
  return ok({ kind, answer: { id, sequence, tab, item, value, ...time } });
}

/** How a sitting stands, for the clock on the candidate's screen. */
export type Clock = {
  readonly phase: string;
  /** Milliseconds left, grace not counted; below 0 none. */
  readonly left: number;
  readonly isOver: boolean;
};

export type Reception = { readonly db: Db; readonly ledger: Ledger; readonly content: Content };

export type Received = { readonly receipts: readonly Receipt[]; readonly clock: Clock };

/** Takes what was told, in its order. Undefined for a sitting that is not theirs. */
export async function receive(
  { db, ledger, content }: Reception,
  { by, at }: Act,
  id: string,
  list: readonly unknown[],
): Promise<Received | undefined> {
  const row = await ownRow(db, by, id);
  if (!row) return undefined;
  const plan = keptPlan(row);
  const takings = await Promise.all(
    list.map(async (one) => {
      const happening = happeningFrom(content, plan, one);
      if (!happening.ok) return happening;
      const { company, person } = by;
      return ledger.add({ sitting: id, company, person, happening: happening.value, at });
    }),
  );
  const receipts = takings.map((taking, place): Receipt => {
    const one = list[place];
    const told = isFields(one) && isUuid(one['id']) ? one['id'] : undefined;
    return taking.ok ? { id: told, as: taking.value.as } : { id: told, refused: taking.error };
  });
  const last = takings.findLast((taking) => taking.ok);
  const sitting = last?.ok ? last.value.sitting : (await sittingBy(db, by.company, id))?.sitting;
  return sitting && { receipts, clock: clockOf(sitting, Date.parse(at)) };
}

export const clockOf = (sitting: Sitting, now: number): Clock => ({
  phase: sitting.phase,
  left: (deadlineOf(sitting) ?? now + sitting.plan.allowed) - now,
  isOver: isOver(sitting, now),
});
