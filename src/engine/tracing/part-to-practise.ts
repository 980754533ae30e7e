import { stretchAround } from '#engine/marking/stretch.ts';
import type { Part } from '#engine/method/part-of.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import { type KeyPointState, toPractise } from './key-point-states.ts';

/**
 * The stretch of a wall's written order around what is least sure on it, up to `most` steps of that;
 * undefined where everything on this wall is sure, or where the stretch would be all of it.
 */
export function partToPractise(
  { method, steps }: Sequence,
  states: readonly KeyPointState[],
  most = 1,
): Part | undefined {
  const order = steps.map(({ id }) => id);
  const weak = toPractise(states)
    .filter(({ point }) => point.method === method.id && order.includes(point.step))
    .map(({ point }) => point.step);
  const { practised } = stretchAround(order, new Set([...new Set(weak)].slice(0, most)));
  const [from, to] = [practised[0], practised.at(-1)];
  return from && to && practised.length < order.length ? [from, to] : undefined;
}
