import { pick, whole, type Random } from '#engine/random.ts';
import { enter } from './base.ts';
import * as exact from './exact.ts';
import type { Family, Given } from './family.ts';
import type { Value } from './formula.ts';

/** What was drawn for each given that is drawn at all. */
export type Drawn = readonly (readonly [given: Given, value: Value])[];

/** In the order of the family, each as likely as any other of its values. */
export const drawGivens = ({ givens }: Family, random: Random): Drawn =>
  givens.flatMap((given) => {
    const value = draw(given, random);
    return value === undefined ? [] : [[given, value] as const];
  });

function draw({ from }: Given, random: Random): Value | undefined {
  switch (from.kind) {
    case 'range': {
      const [low, by] = [enter(from.from), enter(from.by)];
      const steps = exact.floor(exact.divide(exact.subtract(enter(from.to), low), by));
      const drawn = whole(random, 0, Number(steps.n));
      return exact.add(low, exact.multiply(by, exact.whole(drawn)));
    }
    case 'one-of':
      return enter(pick(random, from.values));
    case 'either':
      return whole(random, 0, 1) === 1;
    default:
      return undefined;
  }
}
