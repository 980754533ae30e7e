import type { StepId } from '#engine/method/method.ts';
import { partOf } from '#engine/method/part-of.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import type { Attempt } from './attempt.ts';
import { type AttemptFault, refusal } from './attempt-file.ts';
import { attemptFrom, type Shelf } from './attempt-from.ts';
import { afterHelp } from './guidance.ts';
import type { KeptAttempt } from './kept-attempt.ts';
import { type Review, review } from './review.ts';

export type Marked = {
  readonly attempt: Attempt;
  readonly review: Review;
  /** After the help that was taken. */
  readonly score: number;
};

/**
 * Marks a kept attempt against the content on the shelf: a stretch by its own steps, what stands
 * around it taken as right. Fails with every fault where the content no longer has what it names.
 */
export function markKept(
  { attempt: file, part, help }: Pick<KeptAttempt, 'attempt' | 'part' | 'help'>,
  shelf: Shelf,
): Result<Marked, readonly AttemptFault[]> {
  const whole = attemptFrom(file, shelf);
  if (!whole.ok) return whole;
  const attempt = part ? within(whole.value, part) : whole.value;
  if (!attempt) {
    const said = `The method has no stretch from "${part?.[0]}" to "${part?.[1]}".`;
    return fault([refusal('UNKNOWN_STEP', 'part', said)]);
  }
  const marked = review(attempt);
  return ok({ attempt, review: marked, score: afterHelp(marked.score, help) });
}

function within(
  { sequence, played }: Attempt,
  [from, to]: readonly [string, string],
): Attempt | undefined {
  const part = partOf(sequence, [from as StepId, to as StepId]);
  return part && { sequence: part, played };
}
