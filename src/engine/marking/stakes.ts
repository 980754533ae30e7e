/**
 * What is at stake on a wall, and what a deviation costs of it. The half-and-half rule is this
 * project's own choice, not a published scale: a fault costs half of its weight for being there at
 * all and the other half by how far it went.
 */
import { type Rational, one, zero } from '#engine/measure/rational.ts';
import { type Severity, severities, severityWeights } from '#engine/severity.ts';
import type { Sequence, SequenceStep } from '#engine/method/sequence.ts';

/** A part of a weight, from 0 (excluded) to 1 (included). */
export type Share = Rational;

/** Half for being wrong, half by how far: `degree` runs from 0 to 1 and is cut off there. */
export function gradedShare(degree: Rational): Share {
  const cut = degree.gt(one) ? one : degree.lt(zero) ? zero : degree;
  return cut.add(one).div(2n);
}

export const worst = (found: readonly Severity[]): Severity =>
  severities.findLast((severity) => found.includes(severity)) ?? 'minor';

/** Everything one step can lose: being there, its place, its wait, its settings. */
export function stakeOf(sequence: Sequence, place: number): number {
  const step = sequence.steps[place] as SequenceStep;
  const around = sequence.constraints.filter(
    ({ before, after }) => before === place || after === place,
  );
  return [
    step.severity,
    ...(around.length > 0 ? [worst(around.map(({ severity }) => severity))] : []),
    ...(step.dries ? [step.dries.severity] : []),
    ...step.asks.map(({ severity }) => severity),
  ].reduce((sum, severity) => sum + severityWeights[severity], 0);
}
