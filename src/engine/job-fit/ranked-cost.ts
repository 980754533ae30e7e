/**
 * Several costs in one number, the first above all: sums of up to `terms` of them compare as the lists of
 * their sums do. `most` is the greatest value of each but the first, which may be anything that leaves the
 * number exact. Throws a RangeError where it would not be.
 */
export function ranking(terms: number, most: readonly number[]) {
  const weights = most.reduceRight<readonly number[]>(
    (after, one) => [after[0]! * (terms * one + 1), ...after],
    [1],
  );
  return (costs: readonly number[]): number => {
    const sum = costs.reduce((total, cost, at) => total + cost * weights[at]!, 0);
    if (!Number.isSafeInteger(sum * terms))
      throw new RangeError('These costs are too great to rank.');
    return sum;
  };
}
