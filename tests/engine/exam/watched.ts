import { ofBaseUnits } from '#engine/measure/quantity.ts';
import { leastOf } from '#engine/method/rule.ts';
import type { Observation } from '#engine/exam/judged-points.ts';
import { isMeasured, type WitnessPoint } from '#engine/exam/witness.ts';

/** What an examiner writes down of a point that was done right: measured, at the low end of its rule. */
export const right = (point: WitnessPoint): Observation =>
  isMeasured(point)
    ? { point: point.id, kind: 'measured', value: leastOf(point.rule) }
    : { point: point.id, kind: 'watched', right: true };

/** And done wrong: measured, below that end by as much as it is. */
export function wrong(point: WitnessPoint): Observation {
  if (!isMeasured(point)) return { point: point.id, kind: 'watched', right: false };
  const least = leastOf(point.rule);
  const value = ofBaseUnits(least.value.sub(least.value.abs()).sub(1n), least.dimension);
  return { point: point.id, kind: 'measured', value };
}
