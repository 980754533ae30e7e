/**
 * How sure one may be, after each try, that somebody knows something: Bayesian knowledge tracing. What
 * is known may still be done wrong (a slip), what is not known may come out right (a guess), and
 * each try may teach it. Nothing is forgotten. O(tries), in doubles.
 *
 * A. T. Corbett, J. R. Anderson, "Knowledge tracing: modeling the acquisition of procedural
 * knowledge", User Modeling and User-Adapted Interaction 4, 1995.
 */
import type { TraceModel } from './trace-model.ts';

export type Traced = {
  /** Of its coming out right, before it was seen. */
  readonly predicted: number;
  /** Of its having been known in this try, once that was seen. */
  readonly posterior: number;
  /** Of its being known now, after what this try has taught. */
  readonly next: number;
};

/** One for each try, in their order: whether it came out right. */
export function traced(model: TraceModel, tries: Iterable<boolean>): readonly Traced[] {
  const { learn, slip, guess } = model;
  let known = model.known;
  // Kept beside it: next to 1 a double could not tell a little doubt from none, and would stay there.
  let unknown = 1 - known;
  return Array.from(tries, (isRight) => {
    const predicted = known * (1 - slip) + unknown * guess;
    const byKnowing = known * (isRight ? 1 - slip : slip);
    const byChance = unknown * (isRight ? guess : 1 - guess);
    const seen = byKnowing + byChance;
    // What the model holds impossible teaches it nothing.
    const posterior = seen === 0 ? known : byKnowing / seen;
    const doubt = seen === 0 ? unknown : byChance / seen;
    known = posterior + doubt * learn;
    unknown = doubt * (1 - learn);
    return { predicted, posterior, next: known };
  });
}
