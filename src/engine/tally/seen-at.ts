import { standingOf } from '#engine/marking/attempt.ts';
import { keyPointsOf, stepsOf } from '#engine/tracing/key-point.ts';
import { type Reviewed, seenIn } from '#engine/tracing/seen.ts';
import type { Spot } from './spot.ts';

export type SeenAt = { readonly spot: Spot; readonly isWrong: boolean };

/**
 * Every spot that the review of an attempt judged, once. A constraint is judged where it holds on this
 * wall and both of its steps were played; steps left out break no order, they were left out.
 */
export function seenAt(reviewed: Reviewed): readonly SeenAt[] {
  const { sequence } = reviewed.attempt;
  const { method, steps, constraints } = sequence;
  const seen = seenIn(reviewed);
  const points = [...stepsOf(method), ...keyPointsOf(method)].flatMap((point) => {
    // Whether a step stands in its turn is told by its constraints.
    const isRight = point.kind === 'place' ? undefined : seen(point);
    if (isRight === undefined || point.kind === 'place') return [];
    const of = { method: method.id, step: point.step };
    const spot: Spot =
      point.kind === 'setting'
        ? { ...of, kind: point.kind, setting: point.setting }
        : { ...of, kind: point.kind };
    return [{ spot, isWrong: !isRight }];
  });

  const turns = new Map(standingOf(reviewed.attempt).map(({ step }, turn) => [step, turn]));
  const pairs = new Map(constraints.map((pair) => [`${pair.before} ${pair.after}`, pair]));
  const orders = [...pairs.values()].flatMap(({ before, after }) => {
    const [first, second] = [turns.get(before), turns.get(after)];
    if (first === undefined || second === undefined) return [];
    const spot: Spot = {
      method: method.id,
      kind: 'order',
      before: steps[before]!.id,
      after: steps[after]!.id,
    };
    return [{ spot, isWrong: first > second }];
  });
  return [...points, ...orders];
}
