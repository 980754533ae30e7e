import type { Row } from '#engine/marking/side-by-side.ts';
import type { Method } from '#engine/method/method.ts';
import { m } from '#ui/messages/generated/messages.js';
import { cardWords } from './item-words.ts';

export type BeatWords = { readonly card: string; readonly note: string };

const nothing = (): BeatWords => ({ card: m.replay_start(), note: '' });

/** What happened on the side of the attempt; where a card belongs is its place in the right order. */
export function leftWords(
  method: Method,
  row: Row | undefined,
  order: readonly string[],
): BeatWords {
  if (!row) return nothing();
  const { played, right } = row;
  if (!played) {
    return {
      card: m.replay_nothing(),
      note: right?.fate === 'added' ? m.replay_left_out() : m.replay_elsewhere(),
    };
  }
  const { card, fate } = played;
  const note = {
    stands: '',
    moved: m.review_order_moved({ place: order.indexOf(card) + 1 }),
    stray: m.review_order_stray(),
    again: m.review_order_again(),
  }[fate];
  return { card: cardWords(method, card), note };
}

/** What happens on the right side. */
export function rightWords(method: Method, row: Row | undefined): BeatWords {
  if (!row) return nothing();
  if (!row.right) return { card: m.replay_nothing(), note: '' };
  const { step, fate } = row.right;
  const note = {
    stands: '',
    moved: m.replay_put_here(),
    added: m.review_order_added(),
  }[fate];
  return { card: cardWords(method, step), note };
}
