/** The order in which a simulated learner plays the cards of a wall. O(steps^2) at worst. */
import { lineUp } from '#engine/method/line-up.ts';
import { covers, type Pair } from '#engine/method/partial-order.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import { type Random, whole } from '#engine/random.ts';
import { errs, type Learner } from './learner.ts';

/** How far from its written place a card may drift where order allows it. */
const drift = 4;

/** Steps by place in the sequence: correct but for steps left out, and steps done before what they follow. */
export function playedOrder(
  sequence: Sequence,
  learner: Learner,
  random: Random,
): readonly number[] {
  const { steps, order, method } = sequence;
  const drifted = steps
    .map((_, step) => ({ step, at: step + whole(random, 0, drift) }))
    .sort((a, b) => a.at - b.at || a.step - b.step)
    .map(({ step }) => step);
  const pairs = covers(order);
  let played = lineUp(order, drifted);
  for (const [step, { id }] of steps.entries()) {
    const name = `${method.id}/${id}`;
    // Both are drawn whatever comes of them, so that one mistake does not shift the chance of another.
    const isSwapped = errs(random, learner, 'swapped', name);
    const isLeftOut = errs(random, learner, 'left-out', name);
    if (isLeftOut) played = played.filter((other) => other !== step);
    else if (isSwapped) played = broughtForward(played, step, pairs);
  }
  return played;
}

/** The step moved to just before the nearest one that it must follow. */
function broughtForward(
  played: readonly number[],
  step: number,
  pairs: readonly Pair[],
): readonly number[] {
  const places = pairs.flatMap(([before, after]) =>
    after === step ? [played.indexOf(before)] : [],
  );
  const nearest = Math.max(-1, ...places.filter((place) => place < played.indexOf(step)));
  if (nearest < 0) return played;
  return played.filter((other) => other !== step).toSpliced(nearest, 0, step);
}
