/**
 * How far an order is from the one right order: how many of all pairs it keeps, and by how many places
 * each step is off. Credit is Kendall's rank correlation, the pairs kept less those turned round over all
 * of them, and nothing below nothing: shuffled at random it comes to nothing on the average, turned round
 * altogether too. A step that is missing keeps no pair. O(steps^2).
 *
 * M. G. Kendall, "A new measure of rank correlation", Biometrika 30, 1938.
 */
import type { Answer } from './answer.ts';
import { choiceKey } from './choice-key.ts';
import type { Fitted } from './fitted.ts';
import { grade } from './grade.ts';
import type { PutInOrder } from './question.ts';
import type { OrderVerdict } from './verdict.ts';

export function markOrder(question: Fitted<PutInOrder>, answer: Answer): OrderVerdict {
  const { id, steps, point, because } = question;
  const given = [...new Set<string>(answer.kind === 'order' ? answer.steps : [])];
  const places = steps.map((say) => given.indexOf(choiceKey(id, say)));
  const kept = pairsKept(places);
  const pairs = (steps.length * (steps.length - 1)) / 2;
  return {
    kind: 'order',
    ...grade((2 * kept - pairs) / pairs),
    point,
    steps: steps.map((say, place) => ({
      say,
      off: places[place]! < 0 ? undefined : places[place]! - place,
    })),
    kept,
    pairs,
    because,
  };
}

/** Of places in the right order, -1 for what is not placed. */
export const pairsKept = (places: readonly number[]): number =>
  places.reduce(
    (sum, place, index) =>
      sum + places.slice(0, index).filter((other) => other >= 0 && other < place).length,
    0,
  );
