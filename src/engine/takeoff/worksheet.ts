/**
 * A sheet of problems by seed: the same families, seed and count give the same sheet for ever. Every
 * family comes about equally often, in an order drawn by the seed.
 */
import { fault, ok, type Result } from '#engine/result.ts';
import { randomFrom, shuffle, whole } from '#engine/random.ts';
import type { FamilyId } from './family.ts';
import { instanceOf, type Instance } from './instance.ts';
import type { Takeoff } from './takeoff.ts';

export type WorksheetProblem = {
  /** With the family, this opens the same problem anywhere else. */
  readonly seed: string;
  readonly instance: Instance;
};

export type WorksheetFault = { readonly code: 'NO_PROBLEM'; readonly family: FamilyId };

export const mostProblems = 40;

const highestSeed = 99_999;

/** More draws than this do not help a family that has run dry. */
const mostDraws = 20;

/** Throws a RangeError without families, or for a count that is not from 1 to the most. */
export function worksheetOf(
  takeoffs: readonly Takeoff[],
  seed: string,
  count: number,
): Result<readonly WorksheetProblem[], WorksheetFault> {
  if (takeoffs.length === 0) throw new RangeError('A worksheet has a family or more.');
  if (!Number.isInteger(count) || count < 1 || count > mostProblems) {
    throw new RangeError(`A worksheet has 1 to ${mostProblems} problems, not ${count}.`);
  }
  const random = randomFrom(`${seed}/worksheet`);
  const taken = new Set<string>();
  const problems: WorksheetProblem[] = [];
  let round: readonly Takeoff[] = [];
  while (problems.length < count) {
    if (round.length === 0) round = shuffle(random, takeoffs);
    const [takeoff, ...rest] = round as readonly [Takeoff, ...Takeoff[]];
    round = rest;
    const problem = fresh(takeoff, taken, () => String(whole(random, 1, highestSeed)));
    if (!problem) return fault({ code: 'NO_PROBLEM', family: takeoff.family.id });
    problems.push(problem);
  }
  return ok(problems);
}

/** A problem that is not on the sheet yet, as long as there is one. */
function fresh(
  takeoff: Takeoff,
  taken: Set<string>,
  next: () => string,
): WorksheetProblem | undefined {
  let found: WorksheetProblem | undefined;
  for (let draw = 0; draw < mostDraws; draw += 1) {
    const seed = next();
    const instance = instanceOf(takeoff, seed);
    if (!instance.ok) continue;
    found = { seed, instance: instance.value };
    const key = `${takeoff.family.id}/${seed}`;
    if (!taken.has(key)) {
      taken.add(key);
      return found;
    }
  }
  return found;
}
