/**
 * Section 6 of the Law School Admission Test, 1000 persons and five items (R. D. Bock, M. Lieberman,
 * Psychometrika 35, 1970), as in D. Rizopoulos, "ltm", Journal of Statistical Software 17(5), 2006, and
 * in data/LSAT.rda of github.com/cran/ltm and data/LSAT6.RData of github.com/cran/mirt.
 */
import { expect } from 'vitest';
import { fitItems } from '#engine/statistics/fit-items.ts';
import type { ConvergedFit } from '#engine/statistics/item-fit.ts';
import type { ItemModel } from '#engine/statistics/item-model.ts';
import { type Answer, type Responses, responsesFrom } from '#engine/statistics/responses.ts';

/** How many had each pattern, from 00000 to 11111. */
const counts = [
  3, 6, 2, 11, 1, 1, 3, 4, 1, 8, 0, 16, 0, 3, 2, 15, 10, 29, 14, 81, 3, 28, 15, 80, 16, 56, 21, 173,
  11, 61, 28, 298,
];

export const rowOf = (pattern: string): readonly Answer[] =>
  [...pattern].map((answer) => (answer === '.' ? null : answer === '1' ? 1 : 0));

/** A text a person: `1` right, `0` wrong, `.` absent. */
export function answered(patterns: readonly string[]): Responses {
  const responses = responsesFrom(patterns.map(rowOf));
  if (!responses.ok) throw new Error(responses.error.map(({ message }) => message).join(' '));
  return responses.value;
}

export const lsat6 = answered(
  counts.flatMap((count, pattern) =>
    Array.from({ length: count }, () => pattern.toString(2).padStart(5, '0')),
  ),
);

export function converged(responses: Responses, model: ItemModel): ConvergedFit {
  const fit = fitItems(responses, model);
  if (!fit.ok) throw new Error(fit.error.message);
  if (fit.value.outcome !== 'converged') throw new Error(fit.value.reason);
  return fit.value;
}

/** The items of a fit that could be estimated. */
export const curvesOf = ({ items }: ConvergedFit) => items.filter((item) => item.estimable);

/** Each to so many places. */
export function expectEach(
  got: readonly (number | undefined)[],
  wanted: readonly number[],
  places: number,
): void {
  expect(got).toHaveLength(wanted.length);
  for (const [at, value] of wanted.entries()) expect(got[at]).toBeCloseTo(value, places);
}
