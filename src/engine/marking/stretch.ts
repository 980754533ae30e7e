import type { StepId } from '#engine/method/method.ts';

/** A stretch of the work to practise again: what stands already, what is played, what follows. */
export type Stretch = {
  readonly standing: readonly StepId[];
  readonly practised: readonly StepId[];
  readonly following: readonly StepId[];
};

/**
 * The part of a correct order from just before the first step missed to just after the last. The
 * order is correct, so the part that stands already is one that could stand.
 */
export function stretchAround(order: readonly StepId[], missed: ReadonlySet<string>): Stretch {
  const places = order.flatMap((step, place) => (missed.has(step) ? [place] : []));
  const from = Math.max(0, Math.min(...places, order.length) - 1);
  const to = Math.min(order.length, Math.max(...places, -1) + 2);
  return places.length === 0
    ? { standing: order, practised: [], following: [] }
    : {
        standing: order.slice(0, from),
        practised: order.slice(from, to),
        following: order.slice(to),
      };
}
