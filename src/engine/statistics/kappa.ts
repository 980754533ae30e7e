/**
 * How far two examiners agree beyond what their habits would give by chance: Cohen's kappa, plain
 * (Educational and Psychological Measurement 20, 1960) or with disagreements weighed (Psychological
 * Bulletin 70, 1968). Its standard error is that of many cases (J. L. Fleiss, J. Cohen, B. S. Everitt,
 * Psychological Bulletin 72, 1969). O(categories^2).
 */
export type KappaUndefined =
  /** Nothing was judged. */
  | 'no-cases'
  /** By chance alone they would agree always, as where both name one category only. */
  | 'no-room-for-disagreement';

export type Kappa = {
  readonly cases: number;
  /** 1 for full agreement, 0 for that of chance, below 0 for less. */
  readonly kappa: number;
  readonly error: number;
};

/**
 * `counts[i][j]`: cases that the first examiner put into category i and the second into j. `weights`:
 * how bad each disagreement is, 0 or more and 0 where they agree; without them all are as bad. Throws a
 * RangeError on tables that are not square and alike, on counts that are not whole, and on other
 * weights.
 */
export function cohenKappa(
  counts: readonly (readonly number[])[],
  weights: readonly (readonly number[])[] = counts.map((row, i) =>
    row.map((_, j) => (i === j ? 0 : 1)),
  ),
): Kappa | KappaUndefined {
  check(counts, weights);
  const total = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0);
  const cases = total(counts.map(total));
  if (cases === 0) return 'no-cases';
  const first = counts.map((row) => total(row) / cases);
  const second = counts.map((_, j) => total(counts.map((row) => row[j]!)) / cases);
  const over = (value: (i: number, j: number) => number): number =>
    total(counts.flatMap((row, i) => row.map((_, j) => value(i, j))));
  const share = (i: number, j: number): number => counts[i]![j]! / cases;
  const observed = over((i, j) => share(i, j) * weights[i]![j]!);
  const expected = over((i, j) => first[i]! * second[j]! * weights[i]![j]!);
  if (expected === 0) return 'no-room-for-disagreement';
  const ratio = observed / expected;
  // The weight that each category meets on average in what the other examiner says.
  const met = weights.map((row) => total(row.map((weight, j) => weight * second[j]!)));
  const given = weights.map((_, j) => total(weights.map((row, i) => row[j]! * first[i]!)));
  const squares = over(
    (i, j) => share(i, j) * (weights[i]![j]! - (met[i]! + given[j]!) * ratio) ** 2,
  );
  const variance = (squares - (ratio * expected) ** 2) / (cases * expected * expected);
  return { cases, kappa: 1 - ratio, error: Math.sqrt(Math.max(0, variance)) };
}

function check(
  counts: readonly (readonly number[])[],
  weights: readonly (readonly number[])[],
): void {
  const isSquare = [counts, weights].every(
    (table) => table.length === counts.length && table.every((row) => row.length === counts.length),
  );
  if (!isSquare) throw new RangeError('Counts and weights are square tables of one size.');
  if (!counts.flat().every((count) => Number.isSafeInteger(count) && count >= 0)) {
    throw new RangeError('Counts are whole numbers, 0 or more.');
  }
  const areWeights = weights.every((row, i) =>
    row.every((weight, j) => (i === j ? weight === 0 : weight >= 0 && weight < Infinity)),
  );
  if (!areWeights) throw new RangeError('Weights are 0 or more, and 0 where examiners agree.');
}
