import { type Help, helpCost } from '#engine/marking/guidance.ts';
import type { Marked } from '#engine/marking/kept-review.ts';

export type ScoreLine =
  | { readonly kind: 'item'; readonly place: number; readonly points: number }
  | {
      readonly kind: 'help';
      readonly help: Help;
      readonly count: number;
      readonly points: number;
    }
  /** What help would have cost beyond the last point. */
  | { readonly kind: 'floor'; readonly points: number };

const tenths = (points: number): number => Math.round(points * 10);

/** Everything between 100 and the score, in points to a tenth: taken off, or for the floor put back. */
export function scoreLines(
  { review, score }: Pick<Marked, 'review' | 'score'>,
  help: readonly Help[],
): readonly ScoreLine[] {
  const items = review.items.map(({ points }, place) => ({ kind: 'item' as const, place, points }));
  const kinds = Object.keys(helpCost) as readonly Help[];
  const helps = kinds
    .map((kind) => ({ kind, count: help.filter((one) => one === kind).length }))
    .filter(({ count }) => count > 0)
    .map(({ kind, count }) => ({
      kind: 'help' as const,
      help: kind,
      count,
      points: tenths(helpCost[kind] * count) / 10,
    }));
  const taken = [...items, ...helps].reduce((sum, { points }) => sum + tenths(points), 0);
  const beyond = taken - (1000 - tenths(score));
  return [
    ...items.filter(({ points }) => points > 0),
    ...helps,
    ...(beyond > 0 ? [{ kind: 'floor' as const, points: beyond / 10 }] : []),
  ];
}
