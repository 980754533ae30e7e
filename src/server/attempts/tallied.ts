/**
 * What the reviews of one person in one method or family add up to, as it is stored: by the name of the
 * spot, how often it was judged and how often it went wrong.
 */
import type { Method } from '#engine/method/method.ts';
import { seenAt } from '#engine/tally/seen-at.ts';
import { spotKey, spotNamed } from '#engine/tally/spot.ts';
import type { Tally } from '#engine/tally/tally.ts';
import type { MarkedProblem } from '#engine/takeoff/mark-kept.ts';
import type { Reviewed } from '#engine/tracing/seen.ts';
import type { MarkedRun } from '#engine/written/run.ts';

export type Tallied = Readonly<Record<string, readonly [judged: number, wrong: number]>>;

export const ofReview = (reviewed: Reviewed): Tallied =>
  // Each spot comes once.
  Object.fromEntries(
    seenAt(reviewed).map(({ spot, isWrong }) => [spotKey(spot), [1, Number(isWrong)]]),
  );

/** A part of a problem counts as one spot, and each named slip that was made as another. */
export function ofProblem(family: string, { parts }: MarkedProblem): Tallied {
  const answered = parts.flatMap(({ part, verdict }) => (verdict ? [{ part, verdict }] : []));
  return Object.fromEntries(
    answered.flatMap(({ part, verdict }) => [
      [`${family}/part/${part}`, [1, verdict.kind === 'right' ? 0 : 1] as const],
      ...verdict.slips.map(({ id }) => [`${family}/slip/${part}/${id}`, [1, 1] as const] as const),
    ]),
  );
}

/** Each question counts as one spot; one that was left open was not judged. */
export const ofRun = (topic: string, { answers }: MarkedRun): Tallied =>
  Object.fromEntries(
    answers.flatMap(({ question, verdict }) =>
      verdict
        ? [[`${topic}/question/${question.id}`, [1, verdict.outcome === 'right' ? 0 : 1]] as const]
        : [],
    ),
  );

/** Neither order nor grouping matters. */
export function added(one: Tallied, other: Tallied): Tallied {
  const sum: Record<string, readonly [number, number]> = { ...one };
  for (const [key, [judged, wrong]] of Object.entries(other)) {
    const [before, wrongBefore] = sum[key] ?? [0, 0];
    sum[key] = [before + judged, wrongBefore + wrong];
  }
  return sum;
}

/** A person's sum in a method as rows again, without what the method no longer has. */
export const tallyFrom = (method: Method, person: string, sum: Tallied): Tally =>
  Object.entries(sum).flatMap(([key, [judged, wrong]]) => {
    const spot = spotNamed(key, method);
    return spot ? [{ spot, person, judged, wrong }] : [];
  });
