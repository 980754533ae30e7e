/**
 * A wall to find faults on: built in a correct order, but for 1 to 3 flaws drawn from what the content
 * says can go wrong. What is wrong with it is what its review finds, so that the two cannot disagree; a
 * flaw is taken only if the review tells it as one item and every item still apart: no fault brings
 * another with it, takes another away, or could be pointed out as the same kind in the same zone. Each
 * draw costs a review, and there are at most `mostDraws`.
 */
import type { Sequence } from '#engine/method/sequence.ts';
import { randomFrom, whole } from '#engine/random.ts';
import { type Flaw, flawsOf } from './flaw.ts';
import { type FaultyWall, planOf, wallWith } from './wall-with.ts';

export type { FaultyWall } from './wall-with.ts';

export const mostFaults = 3;
const mostDraws = 60;

/** The same seed gives the same wall. Undefined where nothing can be wrong that could be found. */
export function faultyWall(sequence: Sequence, seed: string): FaultyWall | undefined {
  const random = randomFrom(`${seed}/faults`);
  const wanted = whole(random, 1, mostFaults);
  const plan = planOf(sequence, random);
  const drawFlaw = flawsOf(sequence);
  let flaws: readonly Flaw[] = [];
  let wall: FaultyWall | undefined;
  for (let draw = 0; draw < mostDraws && flaws.length < wanted; draw += 1) {
    const flaw = drawFlaw(random);
    const more = flaw && [...flaws, flaw];
    const found = more && wallWith(sequence, plan, more);
    if (found) [flaws, wall] = [more, found];
  }
  return wall;
}
