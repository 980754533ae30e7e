import type { Attempt } from '#engine/marking/attempt.ts';
import { touchAll } from '#engine/marking/touch-all.ts';
import type { Item } from '#engine/marking/review.ts';
import type { SequenceStep } from '#engine/method/sequence.ts';
import type { Fault, Work } from '#engine/picture/work.ts';
import { severities } from '#engine/severity.ts';

/** What the picture shows: what stood before, and what was put up until this minute. */
export function workOf(
  attempt: Attempt,
  before: readonly SequenceStep[],
  minute: number,
  items: readonly Item[] = [],
): Work {
  const wet = touchAll(attempt, minute)
    .filter(({ feel }) => feel !== 'dry')
    .map(({ step }) => step.id as string);
  return {
    placed: [
      ...before.map(({ id }) => ({ card: id, settings: new Map(), state: 'dry' as const })),
      ...attempt.played.map(({ card, settings }) => ({
        card,
        settings,
        state: wet.includes(card) ? ('wet' as const) : ('dry' as const),
      })),
    ],
    faults: faultsOf(items),
    ghost: false,
  };
}

/** The worst that was found of each card. */
const faultsOf = (items: readonly Item[]): readonly Fault[] =>
  [...new Set(items.map(({ card }) => card as string))].map((card) => ({
    card,
    severity: severities.findLast((severity) =>
      items.some((item) => item.card === card && item.severity === severity),
    )!,
  }));
