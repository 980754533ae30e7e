import type { Attempt } from '#engine/marking/attempt.ts';
import { type Item, type Review, review } from '#engine/marking/review.ts';
import { orderSampler } from '#engine/method/sample-order.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import { below, pick, type Random } from '#engine/random.ts';
import { builtWith, type Plan } from './built-with.ts';
import { type Fault, faultsOf } from './fault.ts';
import { type Flaw, valuesOf } from './flaw.ts';

export type FaultyWall = {
  readonly attempt: Attempt;
  readonly review: Review;
  /** One for each item of the review, in its order. */
  readonly faults: readonly Fault[];
};

/** A correct order and right settings, by chance. */
export function planOf(sequence: Sequence, random: Random): Plan {
  const sampler = orderSampler(sequence.order);
  return {
    order: sampler.ok ? sampler.value((n) => below(random, n)) : [...sequence.steps.keys()],
    settings: sequence.steps.map(
      ({ asks }) =>
        new Map(
          asks.flatMap((ask) => {
            const right = valuesOf(ask, true);
            return right.length > 0 ? [[ask.id, pick(random, right)] as const] : [];
          }),
        ),
    ),
  };
}

/** The wall with these flaws; undefined where they are not told as one item each, apart from one another. */
export function wallWith(
  sequence: Sequence,
  plan: Plan,
  flaws: readonly Flaw[],
): FaultyWall | undefined {
  const attempt = builtWith(sequence, plan, flaws);
  const found = review(attempt);
  const faults = faultsOf(sequence, found).filter((fault) => fault !== undefined);
  const isTold = flaws.every(
    (flaw) => found.items.filter((item) => isItemOf(sequence, flaw, item)).length === 1,
  );
  const isFair = isTold && found.items.length === flaws.length && faults.length === flaws.length;
  return isFair && areApart(faults) ? { attempt, review: found, faults } : undefined;
}

function isItemOf({ steps }: Sequence, flaw: Flaw, item: Item): boolean {
  switch (flaw.kind) {
    case 'out-of-order':
      return (
        item.kind === flaw.kind &&
        [steps[flaw.before]!.id, steps[flaw.after]!.id].includes(item.card)
      );
    case 'not-on-this-wall':
      return item.kind === flaw.kind && item.card === flaw.decoy;
    case 'out-of-tolerance':
      return (
        item.kind === flaw.kind &&
        item.card === steps[flaw.step]!.id &&
        item.setting === flaw.setting
      );
    default:
      return item.kind === flaw.kind && item.card === steps[flaw.step]!.id;
  }
}

const areApart = (faults: readonly Fault[]): boolean =>
  faults.every((one, index) =>
    faults.slice(0, index).every((other) => {
      const shareCards = one.cards.some((card) => other.cards.includes(card));
      const shareZones = one.zones.some((zone) => other.zones.includes(zone));
      return !shareCards && !(shareZones && one.kind === other.kind);
    }),
  );
