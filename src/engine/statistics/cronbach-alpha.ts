/**
 * Cronbach's alpha for parts that are marked by more than right or wrong (L. J. Cronbach, "Coefficient
 * alpha and the internal structure of tests", Psychometrika 16, 1951). Parts and sums take the same
 * variance, over persons; over persons - 1 on both sides it is the same number. O(persons x parts).
 */
export type AlphaUndefined = 'too-few-parts' | 'too-few-persons' | 'sums-alike';

/** A row a person, a mark a part. Throws a RangeError on uneven rows and on what is no number. */
export function cronbachAlpha(rows: readonly (readonly number[])[]): number | AlphaUndefined {
  const parts = rows[0]?.length ?? 0;
  if (rows.some((row) => row.length !== parts || !row.every(Number.isFinite))) {
    throw new RangeError('Each row has as many marks as the first, all of them numbers.');
  }
  if (rows.length < 2) return 'too-few-persons';
  if (parts < 2) return 'too-few-parts';
  const sums = rows.map((row) => row.reduce((sum, mark) => sum + mark, 0));
  const ofSums = spread(sums);
  // What adding up floats leaves of sums that are alike.
  const dust = 1e-24 * sums.reduce((so, sum) => so + sum * sum, 0);
  if (ofSums <= dust) return 'sums-alike';
  const ofParts = Array.from({ length: parts }, (_, part) => spread(rows.map((row) => row[part]!)));
  return (parts / (parts - 1)) * (1 - ofParts.reduce((so, one) => so + one, 0) / ofSums);
}

function spread(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
}
