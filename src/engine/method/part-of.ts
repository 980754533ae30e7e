import type { StepId } from './method.ts';
import { restrict } from './partial-order.ts';
import type { Sequence } from './sequence.ts';
import { weatherAfter } from './site.ts';

/** A stretch of a sequence, by the ids of its first and its last step as written. */
export type Part = readonly [from: StepId, to: StepId];

/** The places from the first step to the last, both included; undefined where there is no such part. */
export function placesOf({ steps }: Sequence, [from, to]: Part): readonly number[] | undefined {
  const first = steps.findIndex(({ id }) => id === from);
  const last = steps.findIndex(({ id }) => id === to);
  if (first < 0 || last < first) return undefined;
  return Array.from({ length: last - first + 1 }, (_, index) => first + index);
}

/**
 * The sequence in which only this part is still to be done. What stands before it is the beginning
 * of a correct order, and whatever is bound through another step is bound through one of the part,
 * so that the constraints among its steps say all. What stands has changed the weather of the wall
 * already. No card lies on the bench that belongs nowhere.
 */
export function partOf(sequence: Sequence, part: Part): Sequence | undefined {
  const places = placesOf(sequence, part);
  if (!places) return undefined;
  const now = new Map(places.map((place, index) => [place, index]));
  return {
    ...sequence,
    weather: weatherAfter(sequence.weather, sequence.steps.slice(0, places[0])),
    steps: places.map((place) => sequence.steps[place]!),
    constraints: sequence.constraints.flatMap((constraint) => {
      const [before, after] = [now.get(constraint.before), now.get(constraint.after)];
      return before === undefined || after === undefined ? [] : [{ ...constraint, before, after }];
    }),
    order: restrict(sequence.order, places),
    strays: [],
  };
}
