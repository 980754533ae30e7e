/**
 * How well a fitted model gives the number of persons with each pattern of answers: G2, the likelihood
 * ratio against patterns free to be as they are, and Pearson's X2, each a chi-square where patterns are
 * not too many for the persons. O(patterns x items x points).
 */
import { fault, ok, type Result } from '#engine/result.ts';
import { chiSquareTail } from './chi-square.ts';
import { logMarginal } from './expected-ability.ts';
import type { ConvergedFit } from './item-fit.ts';
import { patternsOf } from './patterns.ts';
import { normalQuadrature } from './quadrature.ts';
import type { Responses } from './responses.ts';

export type PatternFit = {
  readonly g2: number;
  readonly x2: number;
  readonly degrees: number;
  /** How often chance alone gives as large a G2. */
  readonly chance: number;
};

export type PatternFitFault = {
  readonly code: 'ABSENT_ANSWERS' | 'TOO_MANY_PATTERNS' | 'NOTHING_TO_TEST';
  readonly message: string;
};

/**
 * The least persons a pattern on average: a usual bound for a chi-square (W. G. Cochran 1954, from
 * memory).
 */
const fewestEach = 5;

/** The responses are those that were fitted. */
export function patternFit(
  responses: Responses,
  fit: ConvergedFit,
): Result<PatternFit, PatternFitFault> {
  const curves = fit.items.filter((item) => item.estimable);
  const { counts, persons, right, rightFrom, forms } = patternsOf(
    responses,
    curves.map(({ item }) => item),
  );
  if (forms.length !== 1 || forms[0]!.answered.length < curves.length) {
    return fault({ code: 'ABSENT_ANSWERS', message: 'Not everybody answered every item.' });
  }
  const possible = 2 ** curves.length;
  if (persons < fewestEach * possible) {
    const message = `${persons} persons are too few for ${possible} patterns.`;
    return fault({ code: 'TOO_MANY_PATTERNS', message });
  }
  const degrees = possible - 1 - fit.freeParameters;
  if (degrees < 1) {
    return fault({ code: 'NOTHING_TO_TEST', message: 'There are as many parameters as patterns.' });
  }
  const quadrature = normalQuadrature();
  let [g2, x2, seen] = [0, 0, 0];
  for (const [at, count] of counts.entries()) {
    const answers = new Uint8Array(curves.length);
    for (const item of right.subarray(rightFrom[at], rightFrom[at + 1])) answers[item] = 1;
    const expected = persons * Math.exp(logMarginal(curves, answers, quadrature));
    g2 += 2 * count * Math.log(count / expected);
    x2 += (count - expected) ** 2 / expected;
    seen += expected;
  }
  // Patterns that nobody has add what was expected of them.
  x2 += persons - seen;
  return ok({ g2, x2, degrees, chance: chiSquareTail(Math.max(0, g2), degrees) });
}
