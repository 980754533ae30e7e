/**
 * The wall of a question that asks for a fault: built right but for that one, always the same for the
 * same question, so that it is marked as it was shown. In some correct orders a step done too early
 * breaks more than was meant; so a few orders are tried. Each try costs a review.
 */
import { type FaultyWall, planOf, wallWith } from '#engine/inspection/wall-with.ts';
import type { Shelf } from '#engine/marking/attempt-from.ts';
import { type Sequence, sequenceOf } from '#engine/method/sequence.ts';
import { randomFrom } from '#engine/random.ts';
import { flawsFor } from './flaws-for.ts';
import type { FindFault } from './question.ts';

const tries = 12;

/** Undefined where there is no such wall, or the fault cannot be seen on it as one fault. */
export function hiddenWall(
  question: Pick<FindFault, 'id' | 'method' | 'site' | 'dataSheet' | 'fault'>,
  shelf: Shelf,
): FaultyWall | undefined {
  const sequence = sequenceFor(question, shelf);
  return sequence && wallHiding(sequence, question);
}

/** The wall as it should be. */
export function sequenceFor(
  question: Pick<FindFault, 'method' | 'site' | 'dataSheet'>,
  { methods, dataSheets, sequenceOf: built = sequenceOf }: Shelf,
): Sequence | undefined {
  const method = methods.get(question.method);
  const sheet = dataSheets.get(question.dataSheet);
  const sequence = method && sheet && built(method, sheet, question.site);
  return sequence?.ok ? sequence.value : undefined;
}

export function wallHiding(
  sequence: Sequence,
  { id, fault }: Pick<FindFault, 'id' | 'fault'>,
): FaultyWall | undefined {
  const flaws = flawsFor(sequence, fault, id);
  for (let attempt = 0; attempt < tries; attempt += 1) {
    const plan = planOf(sequence, randomFrom(`${id}/wall/${attempt}`));
    for (const flaw of flaws) {
      const wall = wallWith(sequence, plan, [flaw]);
      if (wall) return wall;
    }
  }
  return undefined;
}
