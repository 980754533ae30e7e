/**
 * What a candidate still needs, may take now, or must wait for. Days are days of the calendar, and the
 * day of `today` comes in. A day named `until` is the last one; a day named `from` is the first.
 */
import { addPeriod, laterOf, type IsoDate, type Period } from '#engine/calendar.ts';
import type { Part, PartId, Scheme, SchemeId } from './scheme.ts';

/** A part that was sat. What was voided counts as no try. */
export type Tried = {
  readonly part: PartId;
  readonly on: IsoDate;
  readonly result: 'passed' | 'failed' | 'void';
};

export type PartState =
  /** It counts towards a certificate until that day. */
  | { readonly kind: 'passed'; readonly on: IsoDate; readonly until: IsoDate }
  /** `left`: tries, this one among them. */
  | { readonly kind: 'may-take'; readonly left: number }
  | { readonly kind: 'must-wait'; readonly from: IsoDate; readonly because: WaitCause }
  | { readonly kind: 'needs-certificate' };

export type WaitCause = 'just-failed' | 'too-many-tries';

export type PartStanding = { readonly part: PartId; readonly state: PartState };

export type Standing = {
  readonly parts: readonly PartStanding[];
  /** Certificates that are required and not held today. */
  readonly lacks: readonly SchemeId[];
  /** The last day on which everything counts together; nothing while something is lacking. */
  readonly completeUntil: IsoDate | undefined;
};

/** What is known of a candidate. */
export type Past = {
  readonly tried: readonly Tried[];
  /** Certificates held, each with its last day. */
  readonly held: ReadonlyMap<SchemeId, IsoDate>;
};

/** Towards a first certificate; for one that is to be renewed see `renewalStanding`. */
export const standingOf = (scheme: Scheme, record: Past, today: IsoDate): Standing =>
  standingIn(scheme, scheme.parts, record, today);

/** The same for these parts of it. */
export function standingIn(
  scheme: Scheme,
  asked: readonly Part[],
  { tried, held }: Past,
  today: IsoDate,
): Standing {
  const lacks = scheme.requires.filter((id) => !((held.get(id) ?? '') >= today));
  const parts = asked.map(({ id }) => {
    const tries = tried.filter(
      ({ part, on, result }) => part === id && on <= today && result !== 'void',
    );
    return { part: id, state: stateOf(scheme, tries, lacks.length > 0, today) };
  });
  const ends = parts.flatMap(({ state }) => (state.kind === 'passed' ? [state.until] : []));
  const isComplete = lacks.length === 0 && ends.length === parts.length;
  return { parts, lacks, completeUntil: isComplete ? ends.toSorted()[0] : undefined };
}

function stateOf(
  { keeps, tries: rule }: Scheme,
  tries: readonly Tried[],
  lacksCertificate: boolean,
  today: IsoDate,
): PartState {
  const pass = lastOf(tries.filter(({ result }) => result === 'passed'));
  const until = pass && addPeriod(pass.on, keeps);
  if (pass && until && until >= today) return { kind: 'passed', on: pass.on, until };
  if (lacksCertificate) return { kind: 'needs-certificate' };
  const lastFailed = lastOf(tries.filter(({ result }) => result === 'failed'));
  const waited = lastFailed ? addPeriod(lastFailed.on, rule.wait) : today;
  const free = freeFrom(tries, rule.most, rule.within, today);
  const from = laterOf(waited, free.from);
  if (from <= today) return { kind: 'may-take', left: free.left };
  return { kind: 'must-wait', from, because: from > waited ? 'too-many-tries' : 'just-failed' };
}

const lastOf = (tries: readonly Tried[]): Tried | undefined =>
  tries.reduce<Tried | undefined>(
    (last, one) => (last && last.on > one.on ? last : one),
    undefined,
  );

/** A try counts for a period from its day on; on the day after which it no longer does, there is room. */
function freeFrom(
  tries: readonly Tried[],
  most: number,
  within: Period,
  today: IsoDate,
): { readonly from: IsoDate; readonly left: number } {
  const drops = tries
    .map(({ on }) => addPeriod(on, within))
    .filter((drop) => drop > today)
    .toSorted();
  const left = most - drops.length;
  return left > 0 ? { from: today, left } : { from: drops[-left] ?? today, left: 0 };
}
