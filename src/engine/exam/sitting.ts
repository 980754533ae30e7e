/**
 * One person's sitting of one part, as the events that happened: whatever is asked of it is folded from
 * them, so that a server which stopped knows where everybody stood, and a result can be gone through years
 * later.
 *
 * Time is the server's. While it stood still nobody can say who was kept from working and for how long,
 * so time runs on, and an invigilator grants the stretch back as a pause, even after the time ran out;
 * what was lost comes back to the millisecond, and once only, however many grants name it.
 */
import type { Quantity } from '#engine/measure/quantity.ts';
import { approximate } from '#engine/measure/rational.ts';
import type { Answer, Grant, Instant, SittingEvent } from './sitting-event.ts';
import { milliseconds, type Stretch } from './stretches.ts';

export type SittingPlan = {
  readonly id: string;
  readonly candidate: string;
  readonly part: string;
  /** The questions of the form, in the order in which they are asked. */
  readonly items: readonly string[];
  /** Milliseconds. */
  readonly allowed: number;
  /** Milliseconds after the deadline in which answers still arrive; the same for everybody. */
  readonly grace: number;
};

/** Milliseconds of grace that a plan has unless told otherwise; this project's own choice. */
export const usualGrace = 60_000;

/** A part's time as a plan has it, in milliseconds. */
export const allowedFor = ({ time }: { readonly time: Quantity<'time'> }): number =>
  Math.round(approximate(time.value) * 1000);

export const phases = ['waiting', 'open', 'handed-in', 'released', 'voided'] as const;
export type Phase = (typeof phases)[number];

export type Absence = {
  readonly tab: string;
  readonly from: Instant;
  /** Nothing while it lasts. */
  readonly to: Instant | undefined;
};

export type Sitting = {
  readonly plan: SittingPlan;
  readonly phase: Phase;
  readonly opened: { readonly at: Instant; readonly by: string } | undefined;
  readonly grants: readonly Grant[];
  /** When the server closed it, unless time was granted since. */
  readonly ranOut: Instant | undefined;
  /** By id: every answer that was ever taken. */
  readonly given: ReadonlyMap<string, Answer>;
  /** By question: the answer that counts, the last by sequence. */
  readonly counts: ReadonlyMap<string, Answer>;
  /** By question: when it was first shown. */
  readonly shown: ReadonlyMap<string, Instant>;
  readonly absences: readonly Absence[];
  /** Still asked and kept, and left out of the score. */
  readonly retired: ReadonlySet<string>;
  readonly log: readonly SittingEvent[];
};

export const newSitting = (plan: SittingPlan): Sitting => ({
  plan,
  phase: 'waiting',
  opened: undefined,
  grants: [],
  ranOut: undefined,
  given: new Map(),
  counts: new Map(),
  shown: new Map(),
  absences: [],
  retired: new Set(),
  log: [],
});

/** The state after a log that `accept` wrote: the same log, the same state. Linear in the log. */
export function sittingAfter(plan: SittingPlan, log: Iterable<SittingEvent>): Sitting {
  const draft = draftOf(newSitting(plan));
  for (const event of log) apply(draft, event);
  return draft;
}

/** What one more event makes of it; whether it may happen is asked by `accept` before. */
export function applied(sitting: Sitting, event: SittingEvent): Sitting {
  const draft = draftOf(sitting);
  apply(draft, event);
  return draft;
}

const draftOf = (sitting: Sitting) => ({
  ...sitting,
  grants: [...sitting.grants],
  given: new Map(sitting.given),
  counts: new Map(sitting.counts),
  shown: new Map(sitting.shown),
  absences: [...sitting.absences],
  retired: new Set(sitting.retired),
  log: [...sitting.log],
});

type Draft = ReturnType<typeof draftOf>;

function apply(draft: Draft, event: SittingEvent): void {
  draft.log.push(event);
  switch (event.kind) {
    case 'opened':
      draft.phase = 'open';
      draft.opened = { at: event.at, by: event.by };
      return;
    case 'page-shown':
      if (!draft.shown.has(event.item)) draft.shown.set(event.item, event.at);
      return;
    case 'answered':
      keep(draft, event.answer);
      return;
    case 'left-page':
      draft.absences.push({ tab: event.tab, from: event.at, to: undefined });
      return;
    case 'came-back':
      draft.absences = draft.absences.map((absence) =>
        absence.tab === event.tab && absence.to === undefined
          ? { ...absence, to: event.at }
          : absence,
      );
      return;
    case 'time-granted':
      draft.grants.push(event.grant);
      if ((deadlineOf(draft) ?? event.at) > event.at) draft.ranOut = undefined;
      return;
    case 'item-retired':
      draft.retired.add(event.item);
      return;
    case 'time-ran-out':
      draft.ranOut = event.at;
      return;
    case 'handed-in':
    case 'released':
    case 'voided':
      draft.phase = event.kind;
  }
}

function keep({ given, counts }: Draft, answer: Answer): void {
  given.set(answer.id, answer);
  const current = counts.get(answer.item);
  if (!current || answer.sequence >= current.sequence) counts.set(answer.item, answer);
}

/** The last instant at which there is time left, grace not counted; nothing before it is opened. */
export function deadlineOf({ plan, opened, grants }: Sitting): Instant | undefined {
  if (!opened) return undefined;
  const more = grants.reduce((sum, g) => sum + (g.kind === 'more' ? g.milliseconds : 0), 0);
  const pauses = grants.flatMap((g): readonly Stretch[] => (g.kind === 'pause' ? [g] : []));
  return opened.at + plan.allowed + more + milliseconds(pauses);
}

/** Whether no answer is taken any more, so that it can be marked. */
export function isOver(sitting: Sitting, now: Instant): boolean {
  const deadline = deadlineOf(sitting);
  if (sitting.phase !== 'open') return sitting.phase !== 'waiting';
  return deadline !== undefined && now > deadline + sitting.plan.grace;
}

/** What is there to be marked, in the order of the form; retired questions are marked and left out later. */
export const givenAnswers = ({
  plan,
  counts,
}: Sitting): readonly { readonly item: string; readonly answer: Answer | undefined }[] =>
  plan.items.map((item) => ({ item, answer: counts.get(item) }));

/** What a tab numbers its next answer with. */
export const nextSequence = ({ given }: Sitting): number =>
  [...given.values()].reduce((highest, { sequence }) => Math.max(highest, sequence), 0) + 1;
