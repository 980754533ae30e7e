/**
 * Which family comes next for somebody who practises what they miss. The rule has no intervals and
 * forgets nothing but what lies far back: of the last five parts answered in a family, each one missed
 * adds two chances to the one that every family has, and each half right adds one; a family that was
 * never tried has four. None comes twice in a row. Our own rule, simple enough to be told.
 */
import { weightedPick, type Random } from '#engine/random.ts';
import type { KeptAnswer, KeptProblem } from './kept-problem.ts';

/** So many answers of a family are looked back on. */
export const lookBack = 5;

const untried = 4;

/** The last parts answered in a family, the latest first. */
export const lately = (kept: readonly KeptProblem[], family: string): readonly KeptAnswer[] =>
  kept
    .filter((problem) => problem.family === family)
    .toSorted((a, b) => b.at.localeCompare(a.at))
    .flatMap(({ answers }) => answers.toReversed())
    .slice(0, lookBack);

/** One or more, whole. */
export function chancesOf(kept: readonly KeptProblem[], family: string): number {
  const answers = lately(kept, family);
  if (answers.length === 0) return untried;
  return answers.reduce((sum, { credit }) => sum + 2 - 2 * credit, 1);
}

/** Throws a RangeError where there is nothing to pick from. */
export function pickFamily(
  random: Random,
  families: readonly string[],
  kept: readonly KeptProblem[],
  last?: string,
): string {
  const others = families.filter((family) => family !== last);
  const among = others.length > 0 ? others : families;
  const chances = new Map(among.map((family) => [family, BigInt(chancesOf(kept, family))]));
  return weightedPick(random, among, (family) => chances.get(family) ?? 0n);
}
