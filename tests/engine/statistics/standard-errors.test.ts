/**
 * Standard errors of LSAT section 6 against the bend of its log-likelihood, which is differentiated here
 * by differences of its value alone; that value is the published -2466.653.
 */
import { describe, expect, test } from 'vitest';
import { logMarginal } from '#engine/statistics/expected-ability.ts';
import { converged, curvesOf, lsat6 } from './lsat6.ts';

const items = 5;
const rows = [
  ...Map.groupBy(Array.from({ length: lsat6.persons }).keys(), (person) =>
    lsat6.scores.subarray(person * items, (person + 1) * items).join(''),
  ),
].map(([pattern, { length: count }]) => ({ answers: [...pattern].map(Number), count }));

/** Five slopes, then five intercepts. */
const logLikelihood = (at: readonly number[]): number => {
  const curves = Array.from({ length: items }, (_, item) => ({
    slope: at[item]!,
    intercept: at[items + item]!,
  }));
  return rows.reduce((sum, { answers, count }) => sum + count * logMarginal(curves, answers), 0);
};

const step = 2e-3;

/** Less the second differences: what the answers tell of each two parameters. */
function bendAt(best: readonly number[]): number[][] {
  const moved = (i: number, by: number, j: number, also: number): number =>
    logLikelihood(best.map((value, at) => value + (at === i ? by : 0) + (at === j ? also : 0)));
  return best.map((_, i) =>
    best.map(
      (__, j) =>
        -(
          moved(i, step, j, step) -
          moved(i, step, j, -step) -
          moved(i, -step, j, step) +
          moved(i, -step, j, -step)
        ) /
        (4 * step * step),
    ),
  );
}

/** By elimination beside the unit matrix. */
function inverted(matrix: readonly (readonly number[])[]): number[][] {
  const size = matrix.length;
  const wide = matrix.map((row, i) => [...row, ...matrix.map((_, j) => (i === j ? 1 : 0))]);
  for (let pivot = 0; pivot < size; pivot += 1) {
    const by = wide[pivot]![pivot]!;
    wide[pivot] = wide[pivot]!.map((value) => value / by);
    for (let row = 0; row < size; row += 1) {
      if (row === pivot) continue;
      const times = wide[row]![pivot]!;
      wide[row] = wide[row]!.map((value, at) => value - times * wide[pivot]![at]!);
    }
  }
  return wide.map((row) => row.slice(size));
}

describe('truth', () => {
  test('errors of slope, intercept and difficulty are those of the bend at the maximum', () => {
    const curves = curvesOf(converged(lsat6, 'slope-each'));
    const best = [...curves.map(({ slope }) => slope), ...curves.map(({ intercept }) => intercept)];
    expect(logLikelihood(best)).toBeCloseTo(-2466.653, 3);
    const covariance = inverted(bendAt(best));
    for (const [item, curve] of curves.entries()) {
      const { slope, intercept, slopeError, interceptError, difficultyError } = curve;
      const [ofSlope, ofIntercept, ofBoth] = [
        covariance[item]![item]!,
        covariance[items + item]![items + item]!,
        covariance[item]![items + item]!,
      ];
      expect(slopeError! / Math.sqrt(ofSlope)).toBeCloseTo(1, 4);
      expect(interceptError / Math.sqrt(ofIntercept)).toBeCloseTo(1, 4);
      // Of -intercept / slope, by its differentials in both.
      const [bySlope, byIntercept] = [intercept / slope ** 2, -1 / slope];
      const ofDifficulty =
        bySlope ** 2 * ofSlope +
        byIntercept ** 2 * ofIntercept +
        2 * bySlope * byIntercept * ofBoth;
      expect(difficultyError / Math.sqrt(ofDifficulty)).toBeCloseTo(1, 4);
    }
  });
});
