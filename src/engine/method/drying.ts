/**
 * What a knuckle tells of something that dries, from the time since it was put on and the weather as the
 * steps done so far have left it. The same least time as in the machine and in the marking, so that
 * what feels dry may be covered; but on a surface that is too near the dew point nothing dries,
 * however long one waits, until a step that changes this is done. O(steps).
 */
import type { Rational } from '#engine/measure/rational.ts';
import { marginAboveDewPoint } from './dew-point.ts';
import { drynessAfter, type Dryness } from './dryness.ts';
import { judge } from './rule.ts';
import type { Drying, Sequence } from './sequence.ts';
import { weatherAfter, type Weather } from './site.ts';

/** `dew`: water stands on it or under it, and it will not dry like this. */
export type Feel = Dryness | 'dew';

/** Whether the surface is too near the dew point for this to dry on it. */
export function isDewy({ margin: rule }: Drying, weather: Weather): boolean {
  const margin = rule && marginAboveDewPoint(weather);
  return margin !== undefined && !judge(rule!, margin).within;
}

/** Whether a step dries nowhere while only these steps, by place in the sequence, are done. */
export function staysWet(sequence: Sequence, done: ReadonlySet<number>, step: number): boolean {
  const { dries } = sequence.steps[step]!;
  if (!dries?.margin) return false;
  const changed = sequence.steps.filter((_, place) => done.has(place));
  return isDewy(dries, weatherAfter(sequence.weather, changed));
}

/**
 * Of a step by place in the sequence, so many minutes after it was put on. `done` are the steps done by
 * now, without those whose settings are out of tolerance: they have not changed the weather of the wall.
 */
export function touch(
  sequence: Sequence,
  done: ReadonlySet<number>,
  step: number,
  elapsed: Rational,
): Feel {
  const { dries } = sequence.steps[step]!;
  if (!dries) return 'dry';
  return staysWet(sequence, done, step) ? 'dew' : drynessAfter(dries, elapsed);
}
