import type { Attempt } from '#engine/marking/attempt.ts';
import type { Item } from '#engine/marking/review.ts';
import { approximate } from '#engine/measure/rational.ts';
import { drawWall } from '#engine/picture/draw-wall.ts';
import type { Drawing } from '#engine/picture/drawing.ts';
import { workOf } from './work-of.ts';

const dayInMinutes = 24 * 60;

/** The wall as somebody finds it a day later; with items, what is wrong shows. */
export function drawnADayLater(attempt: Attempt, items?: readonly Item[]): Drawing {
  const last = attempt.played.at(-1)?.minute;
  const minute = (last ? approximate(last) : 0) + dayInMinutes;
  // What belongs on no wall is drawn as a cross, which would give it away: the log tells of it.
  const steps = new Set(attempt.sequence.steps.map(({ id }) => id as string));
  const shown = items
    ? attempt
    : { ...attempt, played: attempt.played.filter(({ card }) => steps.has(card)) };
  return drawWall(attempt.sequence, workOf(shown, [], minute, items));
}
