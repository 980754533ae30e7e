import type { Rational } from '#engine/measure/rational.ts';
import { type Feel, staysWet, touch } from '#engine/method/drying.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import type { Standing } from './attempt.ts';
import { outOfTolerance } from './out-of-tolerance.ts';

/**
 * What a knuckle tells of a card at a reading of the clock. The cards are those played by then, in order
 * and with this one, which has a minute; what feels dry is what the review will not call rushed.
 * O(cards x steps).
 */
export function touchAt(
  sequence: Sequence,
  standing: readonly Standing[],
  card: Standing,
  now: Rational,
): Feel {
  const from = dryingFrom(sequence, standing, card);
  return from ? touch(sequence, changedBy(sequence, standing), card.step, now.sub(from)) : 'dew';
}

/**
 * The reading of the clock from which a card dries: that of its own, or of the card that took the
 * surface out of the reach of dew. Undefined while none has, and without a minute of its own.
 */
export function dryingFrom(
  sequence: Sequence,
  standing: readonly Standing[],
  card: Standing,
): Rational | undefined {
  if (!sequence.steps[card.step]!.dries?.margin) return card.minute;
  const own = standing.indexOf(card);
  let from: Rational | undefined;
  for (const [index, { step, minute }] of standing.entries()) {
    if (index < own || (index > own && sequence.steps[step]!.changes.size === 0)) continue;
    const done = changedBy(sequence, standing.slice(0, index + 1));
    from = staysWet(sequence, done, card.step) ? undefined : (from ?? minute ?? card.minute);
  }
  return from;
}

/** The steps that changed the weather of the wall: one out of tolerance has not. */
const changedBy = (sequence: Sequence, standing: readonly Standing[]): ReadonlySet<number> =>
  new Set(
    standing
      .filter(({ step }) => sequence.steps[step]!.changes.size > 0)
      .filter((card) => outOfTolerance(sequence, [card]).length === 0)
      .map(({ step }) => step),
  );
