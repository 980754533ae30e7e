import { type Attempt, standingOf } from '#engine/marking/attempt.ts';
import type { Review } from '#engine/marking/review.ts';
import { precedes } from '#engine/method/partial-order.ts';
import type { KeyPoint } from './key-point.ts';

/** An attempt with its review, as marking a kept one gives them. */
export type Reviewed = { readonly attempt: Attempt; readonly review: Review };

/** Whether a key point was right; undefined where it was not judged. */
export type Seen = (point: KeyPoint) => boolean | undefined;

/**
 * What a review says of key points; nothing of those that it could not judge: steps of another wall
 * or outside the stretch, settings not given, waits without a reading of the clock on both sides. A
 * step out of order is blamed on the card that has to be moved, as in the review. O(cards x steps).
 */
export function seenIn({ attempt, review }: Reviewed): Seen {
  const { sequence } = attempt;
  const standing = standingOf(attempt);
  const blamed = (step: string, ...kinds: readonly string[]) =>
    review.items.some(({ card, kind }) => card === step && kinds.includes(kind));

  return (point) => {
    if (point.method !== sequence.method.id) return undefined;
    const place = sequence.steps.findIndex(({ id }) => id === point.step);
    if (place < 0) return undefined;
    const index = standing.findIndex(({ step }) => step === place);
    const card = standing[index];
    switch (point.kind) {
      case 'step':
        return !blamed(point.step, 'left-out', 'out-of-order', 'rushed', 'out-of-tolerance');
      case 'place':
        return !blamed(point.step, 'left-out', 'out-of-order');
      case 'wait': {
        if (!sequence.steps[place]!.dries || card?.minute === undefined) return undefined;
        const isFollowed = standing.some(
          ({ step, minute }, at) => at > index && minute && precedes(sequence.order, place, step),
        );
        return isFollowed ? !blamed(point.step, 'rushed') : undefined;
      }
      case 'setting': {
        const asks = sequence.steps[place]!.asks;
        const isAsked = asks.some(({ id }) => id === point.setting);
        if (!isAsked || !card?.settings.has(point.setting)) return undefined;
        return !review.items.some(
          (item) =>
            item.kind === 'out-of-tolerance' &&
            item.card === point.step &&
            item.setting === point.setting,
        );
      }
    }
  };
}
