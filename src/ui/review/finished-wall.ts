import type { Attempt } from '#engine/marking/attempt.ts';
import type { Marked } from '#engine/marking/kept-review.ts';
import type { Item } from '#engine/marking/review.ts';
import { approximate } from '#engine/measure/rational.ts';
import { type Sequence, type SequenceStep, sequenceOf } from '#engine/method/sequence.ts';
import type { Drawing } from '#engine/picture/drawing.ts';
import { drawWall } from '#engine/picture/draw-wall.ts';
import { workOf } from '#engine/inspection/work-of.ts';

/** The whole wall of an attempt, and what stood on it before the stretch that was practised. */
export type Site = { readonly whole: Sequence; readonly before: readonly SequenceStep[] };

export function siteOf({ sequence }: Attempt): Site | undefined {
  const whole = sequenceOf(sequence.method, sequence.dataSheet, sequence.site);
  if (!whole.ok) return undefined;
  const { steps } = whole.value;
  const isPart = sequence.steps.length < steps.length;
  const first = steps.findIndex(({ id }) => id === sequence.steps[0]?.id);
  return { whole: whole.value, before: isPart ? steps.slice(0, Math.max(0, first)) : [] };
}

/** The wall at the reading of the clock of its last card, with the items of the punch list shown. */
export function drawnFrom(site: Site, attempt: Attempt, items: readonly Item[]): Drawing {
  const minute = attempt.played.at(-1)?.minute;
  const work = workOf(attempt, site.before, minute ? approximate(minute) : 0, items);
  return drawWall(site.whole, work);
}

export function finishedWall(
  { attempt, review }: Marked,
  items: readonly Item[] = review.items,
): Drawing | undefined {
  const site = siteOf(attempt);
  return site && drawnFrom(site, attempt, items);
}
