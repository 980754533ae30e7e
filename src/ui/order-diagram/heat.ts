import { type Spot, spotKey } from '#engine/tally/spot.ts';
import type { Trouble } from '#engine/tally/where-it-goes-wrong.ts';
import { m } from '#ui/messages/generated/messages.js';

export const heatLevels = [0, 1, 2, 3, 4] as const;
export type HeatLevel = (typeof heatLevels)[number];

/** How often a spot went wrong, as it is drawn and as it is written. */
export type Heat = {
  readonly level: HeatLevel;
  /** Empty where there is nothing to count: never wrong, or never judged. */
  readonly count: string;
  readonly words: string;
};

/** By the share of what could have gone wrong; a drawing shows no more than five weights apart. */
const levelOf = (wrong: number, judged: number): HeatLevel => {
  if (wrong === 0) return 0;
  if (wrong * 10 <= judged) return 1;
  if (wrong * 4 <= judged) return 2;
  return wrong * 2 <= judged ? 3 : 4;
};

export function heatOf(troubles: readonly Trouble[]): (spot: Spot) => Heat {
  const known = new Map(troubles.map((trouble) => [spotKey(trouble.spot), trouble]));
  return (spot) => {
    const trouble = known.get(spotKey(spot));
    if (!trouble) return { level: 0, count: '', words: m.order_unseen() };
    const { wrong, judged, isTooFew } = trouble;
    return {
      level: levelOf(wrong, judged),
      count: wrong > 0 ? `${wrong}/${judged}` : '',
      words: isTooFew ? m.order_too_few({ wrong, judged }) : m.order_wrong({ wrong, judged }),
    };
  };
}
