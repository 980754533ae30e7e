import { precedes } from '#engine/method/partial-order.ts';
import { pick, shuffle } from '#engine/random.ts';
import { phrase } from '#engine/written/patterns.ts';
import { askedOf, wallWords, type Maker } from './maker.ts';
import { unlike } from './unlike.ts';

/**
 * What must be done before a step: one that the method states, among steps that may come at any time
 * or must come later. None of these comes before it, however far around.
 */
export const comesBefore: Maker = (ground, random, id) => {
  const { sequence, patterns } = ground;
  const { steps, constraints, order } = sequence;
  if (constraints.length === 0) return undefined;
  const { before, after, because } = pick(random, constraints);
  const [first, step] = [steps[before]!, steps[after]!];
  const candidates = shuffle(random, [...steps.keys()])
    .filter((other) => other !== after && !precedes(order, other, after))
    .map((other) => {
      const isLater = precedes(order, after, other);
      const { say } = steps[other]!;
      const pattern = isLater ? 'before-later' : 'before-unbound';
      return { say, because: phrase(patterns, pattern, { step: step.say, other: say }) };
    });
  const wrong = unlike(first.say, candidates);
  if (!wrong) return undefined;
  const ask = phrase(patterns, 'before-ask', { wall: wallWords(ground), step: step.say });
  const point = phrase(patterns, 'before-point', { step: step.say, other: first.say, because });
  return { ...askedOf(ground, step, id, ask, point), kind: 'choose-one', right: first.say, wrong };
};
