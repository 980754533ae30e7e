import type { Ordered, Sequence } from '#engine/method/sequence.ts';
import type { Text } from '#engine/text.ts';

/** A hint climbs these rungs: why something comes next, how it is done, which step it is. */
export const rungs = ['reason', 'key-point', 'step'] as const;
export type Rung = (typeof rungs)[number];

/** Help that was taken while building, and what it costs of 100; this project's own choice. */
export type Help = Rung | 'refusal';
export const helpCost: Readonly<Record<Help, number>> = {
  refusal: 1,
  reason: 0.5,
  'key-point': 1,
  step: 2,
};

/** Points left of a review's score after the help taken, never below 0. */
export const afterHelp = (score: number, taken: readonly Help[]): number =>
  Math.max(0, score * 10 - taken.reduce((sum, help) => sum + helpCost[help] * 10, 0)) / 10;

/** What the hint says about a step on one rung. */
export function hintAt(sequence: Sequence, step: number, rung: Rung): readonly Text[] {
  const { reason, keyPoints, say } = sequence.steps[step]!;
  return rung === 'reason' ? [reason] : rung === 'key-point' ? keyPoints : [say];
}

/** The steps that may come now: not done, and everything before them is. */
export function readySteps(sequence: Sequence, done: ReadonlySet<number>): readonly number[] {
  return sequence.steps.flatMap((_, step) =>
    !done.has(step) && missingBefore(sequence, step, done).length === 0 ? [step] : [],
  );
}

/** The direct constraints that keep a step from coming now, as stated, with their reasons. */
export function missingBefore(
  { constraints }: Sequence,
  step: number,
  done: ReadonlySet<number>,
): readonly Ordered[] {
  return constraints.filter(({ before, after }) => after === step && !done.has(before));
}
