import type { PointSeen, Sureness } from '#engine/tracing/points-of.ts';
import { say } from '#ui/language/language.svelte.ts';
import { m } from '#ui/messages/generated/messages.js';
import { dayWords } from '#ui/people/day-words.ts';

const sureWords: Readonly<Record<Sureness, () => string>> = {
  sure: m.points_sure,
  nearly: m.points_nearly,
  'not-yet': m.points_not_yet,
  unseen: m.points_unseen,
};

export const surenessWords = (sureness: Sureness): string => sureWords[sureness]();

/** What of a step it is. */
export function partWords({ point, ask }: Pick<PointSeen, 'point' | 'ask'>): string {
  if (point.kind === 'wait') return m.points_wait();
  return ask ? say(ask) : m.points_place();
}

export const seenWords = ({ seen, right, lastSeen }: PointSeen): string =>
  lastSeen === undefined
    ? m.points_seen_never()
    : m.points_seen({ right, seen, when: dayWords(lastSeen) });
