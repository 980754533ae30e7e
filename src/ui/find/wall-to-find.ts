import { type FaultyWall, faultyWall } from '#engine/inspection/faulty-wall.ts';
import type { Attempt } from '#engine/marking/attempt.ts';
import type { Item } from '#engine/marking/review.ts';
import type { MethodBundle } from '#engine/compile/method-bundle.ts';
import { approximate } from '#engine/measure/rational.ts';
import { anySite } from '#engine/method/bench.ts';
import { type Sequence, sequenceOf } from '#engine/method/sequence.ts';
import { type Drawing } from '#engine/picture/drawing.ts';
import { drawWall } from '#engine/picture/draw-wall.ts';
import { randomFrom } from '#engine/random.ts';
import { workOf } from '#ui/mockup/wall-work.ts';

export type WallToFind = { readonly sequence: Sequence; readonly faulty: FaultyWall };

/** The same seed gives the same site and the same faults. Undefined where none could be found. */
export function wallToFind(
  { method, dataSheet }: Pick<MethodBundle, 'method' | 'dataSheet'>,
  seed: string,
): WallToFind | undefined {
  const site = anySite(method.site, randomFrom(`${seed}/site`));
  const sequence = sequenceOf(method, dataSheet, site);
  const faulty = sequence.ok ? faultyWall(sequence.value, seed) : undefined;
  return sequence.ok && faulty ? { sequence: sequence.value, faulty } : undefined;
}

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
