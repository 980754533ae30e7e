import type { PlayedFile } from '#engine/marking/attempt-file.ts';
import { attemptFrom } from '#engine/marking/attempt-from.ts';
import { review } from '#engine/marking/review.ts';
import type { Reviewed } from '#engine/tracing/seen.ts';
import { openContent } from '#server/content.ts';
import { soundFolder } from '../../content/fixtures.ts';

/** Prime, wait, set the edge on a drip edge, hang: with a setting, and a decoy that belongs nowhere. */
export const tiny = openContent(soundFolder);

export const tinyMethod = [...tiny.methods.values()][0]!;

/** A card with its settings after `|` and its minute after `@`, as in `hang@90 | turn-up=8 in`. */
const cardOf = (text: string): PlayedFile => {
  const [head = '', ...settings] = text.split('|').map((part) => part.trim());
  const [step = '', minute] = head.split('@');
  return {
    step,
    ...(minute === undefined ? {} : { minute: Number(minute) }),
    ...(settings.length === 0
      ? {}
      : {
          settings: Object.fromEntries(settings.map((one) => one.split('=') as [string, string])),
        }),
  };
};

/** The cards on a tiny wall with a drip edge, or on a plain one, with their review. */
export function built(cards: readonly string[], edge = 'drip'): Reviewed {
  const attempt = attemptFrom(
    { method: tinyMethod.id, site: { edge }, steps: cards.map(cardOf) },
    tiny,
  );
  if (!attempt.ok) throw new Error(attempt.error.map(({ message }) => message).join(' '));
  return { attempt: attempt.value, review: review(attempt.value) };
}
