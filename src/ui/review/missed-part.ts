import type { Item } from '#engine/marking/review.ts';
import { stretchAround } from '#engine/marking/stretch.ts';
import type { Part } from '#engine/method/part-of.ts';
import type { Sequence } from '#engine/method/sequence.ts';

/**
 * The stretch of the written order to practise again: around what was missed, with the step that it
 * was mixed up with or that came too soon. Undefined where nothing of the order was missed, or all.
 */
export function missedPart(sequence: Sequence, items: readonly Item[]): Part | undefined {
  const order = sequence.steps.map(({ id }) => id);
  const missed = new Set(items.flatMap((item) => concerned(sequence, item)));
  const { practised } = stretchAround(order, missed);
  const [from, to] = [practised[0], practised.at(-1)];
  return from && to && practised.length < order.length ? [from, to] : undefined;
}

function concerned({ steps }: Sequence, item: Item): readonly string[] {
  switch (item.kind) {
    case 'not-on-this-wall':
    case 'done-again':
      return [];
    case 'rushed':
      return [item.card, item.next];
    case 'out-of-order': {
      const worst = item.broken[0];
      return worst ? [item.card, steps[worst.before]!.id, steps[worst.after]!.id] : [item.card];
    }
    default:
      return [item.card];
  }
}
