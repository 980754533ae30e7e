/**
 * What a sitting takes, and what it refuses and why. The rules that are choices:
 *
 * - An answer counts if the server has it by the deadline plus the plan's grace, both included. The
 *   grace is there for answers that were given in time and had no signal. Since no clock but the server's
 *   is believed, it is short and everybody has it. Whoever had no signal for longer is granted time by
 *   the invigilator, and their device sends its answers again.
 * - An answer sent twice is acknowledged as it was kept, at any time, and changes nothing.
 * - An answer that arrives after a later one, by sequence, is kept and does not count. Of two with the same
 *   number, from two tabs, the one that arrived later counts.
 * - A question retired in mid-exam is still asked and its answers kept; the score leaves it out.
 * - Nobody starts, prolongs, judges or voids a sitting of their own.
 */
import { fault, ok, type Result } from '#engine/result.ts';
import { applied, deadlineOf, isOver, type Phase, type Sitting } from './sitting.ts';
import type { Grant, Happening, Instant, SittingEvent } from './sitting-event.ts';

export const refusals = [
  'of-another-sitting',
  'not-on-this-form',
  'not-opened',
  'opened-already',
  'late',
  'handed-in',
  'released',
  'voided',
  'id-used-before',
  'bad-sequence',
  'by-the-candidate',
  'no-reason',
  'no-time',
  'pause-outside',
  'time-left',
  'ran-out-already',
  'retired-already',
  'still-open',
] as const;
export type Refusal = (typeof refusals)[number];

export type Accepted = {
  readonly sitting: Sitting;
  /** New in the log; nothing for what was sent twice. */
  readonly event: SittingEvent | undefined;
  /** `older`: kept, and another answer counts. */
  readonly as: 'taken' | 'older' | 'double';
};

/**
 * Takes what happened at `now`, or says why not. Where the server's clock was set back, the log's time
 * stands still until the clock has caught up.
 */
export function accept(
  sitting: Sitting,
  happening: Happening & { readonly sitting: string },
  now: Instant,
): Result<Accepted, Refusal> {
  if (happening.sitting !== sitting.plan.id) return fault('of-another-sitting');
  const at = Math.max(now, sitting.log.at(-1)?.at ?? now);
  const event: SittingEvent = { ...happening, at };
  if (event.kind === 'answered') {
    const known = sitting.given.get(event.answer.id);
    if (known) {
      const isSame = known.item === event.answer.item && known.value === event.answer.value;
      return isSame ? ok({ sitting, event: undefined, as: 'double' }) : fault('id-used-before');
    }
  }
  const refusal = refusalOf(sitting, event);
  if (refusal) return fault(refusal);
  const next = applied(sitting, event);
  const isOlder =
    event.kind === 'answered' && next.counts.get(event.answer.item)?.id !== event.answer.id;
  return ok({ sitting: next, event, as: isOlder ? 'older' : 'taken' });
}

function refusalOf(sitting: Sitting, event: SittingEvent): Refusal | undefined {
  const { plan, phase } = sitting;
  if ('by' in event && event.by === plan.candidate) return 'by-the-candidate';
  if ('because' in event && event.because.trim() === '') return 'no-reason';
  if (event.kind === 'opened') return phase === 'waiting' ? undefined : 'opened-already';
  if (event.kind === 'voided') return phase === 'voided' ? 'voided' : undefined;
  if (phase === 'voided' || phase === 'released') return phase;
  if (event.kind === 'item-retired') return retireRefusal(sitting, event.item);
  if (!sitting.opened) return 'not-opened';
  if (event.kind === 'released') return isOver(sitting, event.at) ? undefined : 'still-open';
  return phase === 'open' ? whileOpen(sitting, sitting.opened.at, event) : handedIn(phase);
}

const handedIn = (phase: Exclude<Phase, 'open'>): Refusal =>
  phase === 'waiting' ? 'not-opened' : phase;

const retireRefusal = ({ plan, retired }: Sitting, item: string): Refusal | undefined => {
  if (!plan.items.includes(item)) return 'not-on-this-form';
  return retired.has(item) ? 'retired-already' : undefined;
};

function whileOpen(sitting: Sitting, opened: Instant, event: SittingEvent): Refusal | undefined {
  const { items, grace } = sitting.plan;
  const deadline = deadlineOf(sitting) ?? opened;
  switch (event.kind) {
    case 'page-shown':
      return items.includes(event.item) ? undefined : 'not-on-this-form';
    case 'answered': {
      const { item, sequence } = event.answer;
      if (!items.includes(item)) return 'not-on-this-form';
      if (!Number.isSafeInteger(sequence) || sequence < 1) return 'bad-sequence';
      return event.at > deadline + grace ? 'late' : undefined;
    }
    case 'time-granted':
      return grantRefusal(event.grant, opened, event.at);
    case 'time-ran-out':
      if (sitting.ranOut !== undefined) return 'ran-out-already';
      return event.at < deadline ? 'time-left' : undefined;
    default:
      return undefined;
  }
}

function grantRefusal(grant: Grant, opened: Instant, now: Instant): Refusal | undefined {
  if (grant.kind === 'more') {
    const { milliseconds } = grant;
    return Number.isSafeInteger(milliseconds) && milliseconds > 0 ? undefined : 'no-time';
  }
  const { from, to } = grant;
  return opened <= from && from < to && to <= now ? undefined : 'pause-outside';
}
