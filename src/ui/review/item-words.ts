import type { Item } from '#engine/marking/review.ts';
import type { Method } from '#engine/method/method.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import { language, say } from '#ui/language/language.svelte.ts';
import { quantityWords } from '#ui/measure/quantity-words.ts';
import { ruleWords } from '#ui/measure/rule-words.ts';
import { m } from '#ui/messages/generated/messages.js';

/** What the card says, of whatever wall it is. */
export function cardWords({ steps, decoys }: Method, id: string): string {
  const card = [...steps, ...decoys].find((one) => one.id === id);
  return card ? say(card.say) : id;
}

export const kindWords = {
  'left-out': m.review_kind_left_out,
  'out-of-order': m.review_kind_out_of_order,
  'not-on-this-wall': m.review_kind_not_on_this_wall,
  'done-again': m.review_kind_done_again,
  rushed: m.review_kind_rushed,
  'out-of-tolerance': m.review_kind_out_of_tolerance,
};

/** How far it went wrong, each part a sentence; the reason comes with the item itself. */
export function particulars(sequence: Sequence, item: Item): readonly string[] {
  const { current } = language;
  switch (item.kind) {
    case 'out-of-order':
      return [
        item.direction === 'early'
          ? m.review_early({ places: item.places })
          : m.review_late({ places: item.places }),
        ...item.broken.map(({ before, after, because }, place) => {
          const [first, second] = [sequence.steps[before]!, sequence.steps[after]!];
          const rule =
            second.id === item.card
              ? m.review_comes_after({ step: say(first.say) })
              : m.review_comes_before({ step: say(second.say) });
          // The first gives the item its own reason, which stands below.
          return place === 0 ? rule : `${rule} ${say(because)}`;
        }),
      ];
    case 'rushed':
      return [
        m.review_waited({
          waited: quantityWords(item.waited, current),
          least: quantityWords(item.least, current),
          next: cardWords(sequence.method, item.next),
        }),
      ];
    case 'out-of-tolerance':
      return [
        m.review_set_to({
          given: quantityWords(item.given, current),
          rule: ruleWords(item.rule),
        }),
      ];
    default:
      return [];
  }
}

export const outcomeWords = {
  accept: { name: m.review_accept, means: m.review_accept_means },
  rework: { name: m.review_rework, means: m.review_rework_means },
  'tear-out': { name: m.review_tear_out, means: m.review_tear_out_means },
};
