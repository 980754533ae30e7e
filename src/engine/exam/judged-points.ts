import type { DimensionName } from '#engine/measure/dimension.ts';
import { commonDimension } from '#engine/measure/dimension.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import { judge, leastOf, type Judgement } from '#engine/method/rule.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { isMeasured, type MeasuredPoint, type WitnessPoint } from './witness.ts';

/** What an examiner wrote down of one point; what they did not get to see has no line. */
export type Observation =
  | { readonly point: string; readonly kind: 'watched'; readonly right: boolean }
  | { readonly point: string; readonly kind: 'measured'; readonly value: Quantity };

export type Judged = {
  readonly point: WitnessPoint;
  /** Nothing where it was not seen. */
  readonly right: boolean | undefined;
  readonly measured: Quantity | undefined;
  /** How far out, where it was measured. */
  readonly judgement: Judgement | undefined;
};

export type ObservationFault = {
  readonly code:
    'UNKNOWN_POINT' | 'SEEN_TWICE' | 'NOT_MEASURED' | 'NOT_A_MEASURE' | 'WRONG_DIMENSION';
  readonly point: string;
};

/**
 * Every point with what was seen of it. A measured value is judged by the rule of its point, bounds
 * included, and never by the examiner's eye.
 */
export function judgedPoints(
  points: readonly WitnessPoint[],
  seen: readonly Observation[],
): Result<readonly Judged[], readonly ObservationFault[]> {
  const byId = new Map(points.map((point) => [point.id, point]));
  const found = new Map<string, Observation>();
  const faults: ObservationFault[] = [];
  for (const observation of seen) {
    const code = faultOf(byId.get(observation.point), observation, found);
    if (code) faults.push({ code, point: observation.point });
    else found.set(observation.point, observation);
  }
  if (faults.length > 0) return fault(faults);
  return ok(points.map((point) => judged(point, found.get(point.id))));
}

function faultOf(
  point: WitnessPoint | undefined,
  observation: Observation,
  found: ReadonlyMap<string, Observation>,
): ObservationFault['code'] | undefined {
  if (!point) return 'UNKNOWN_POINT';
  if (found.has(point.id)) return 'SEEN_TWICE';
  if (!isMeasured(point)) return observation.kind === 'measured' ? 'NOT_A_MEASURE' : undefined;
  if (observation.kind === 'watched') return 'NOT_MEASURED';
  return isLike(point, observation.value) ? undefined : 'WRONG_DIMENSION';
}

const isLike = ({ rule }: MeasuredPoint, value: Quantity<DimensionName>): boolean =>
  commonDimension(leastOf(rule).dimension, value.dimension) !== undefined;

function judged(point: WitnessPoint, seen: Observation | undefined): Judged {
  if (seen?.kind === 'measured' && isMeasured(point)) {
    const judgement = judge(point.rule, seen.value);
    return { point, right: judgement.within, measured: seen.value, judgement };
  }
  const right = seen?.kind === 'watched' ? seen.right : undefined;
  return { point, right, measured: undefined, judgement: undefined };
}
