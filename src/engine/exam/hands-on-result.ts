/**
 * What one examiner's points come to. Each seen point counts by its severity, 1, 3 or 9, as in the
 * simulator's marking (this project's own choice). A critical point that was wrong fails the check
 * whatever the sum, since a wall closes over it; one that was not seen leaves it open. What else was
 * not seen counts neither way: it is no fault of the candidate's.
 */
import type { Quantity } from '#engine/measure/quantity.ts';
import { rational, zero } from '#engine/measure/rational.ts';
import { severityWeights } from '#engine/severity.ts';
import type { Judged } from './judged-points.ts';
import { sumOf, type Mark, type Sum } from './score.ts';
import type { WitnessPoint } from './witness.ts';

export type HandsOnResult = Sum & {
  readonly outcome: 'passed' | 'failed' | 'open';
  /** Of the points that were seen. */
  readonly marks: readonly Mark[];
  readonly wrong: readonly WitnessPoint[];
  readonly unseen: readonly WitnessPoint[];
};

export function handsOnResult(
  judged: readonly Judged[],
  passMark: Quantity<'ratio'>,
): HandsOnResult {
  const marks = judged.flatMap(({ point, right }): readonly Mark[] => {
    if (right === undefined) return [];
    const possible = rational(severityWeights[point.severity]);
    return [{ item: point.id, earned: right ? possible : zero, possible }];
  });
  const those = (wanted: boolean | undefined): readonly WitnessPoint[] =>
    judged.filter(({ right }) => right === wanted).map(({ point }) => point);
  const [wrong, unseen] = [those(false), those(undefined)];
  const sum = sumOf(marks);
  return { ...sum, outcome: outcomeOf(sum, passMark, wrong, unseen), marks, wrong, unseen };
}

function outcomeOf(
  { earned, possible }: Sum,
  passMark: Quantity<'ratio'>,
  wrong: readonly WitnessPoint[],
  unseen: readonly WitnessPoint[],
): HandsOnResult['outcome'] {
  if (wrong.some(isCritical)) return 'failed';
  if (possible.equals(zero) || unseen.some(isCritical)) return 'open';
  return earned.gte(possible.mul(passMark.value)) ? 'passed' : 'failed';
}

const isCritical = ({ severity }: WitnessPoint): boolean => severity === 'critical';
