/**
 * What reliabilities a KR-20 from some persons does not speak against: the logarithm of 1 - KR-20 is
 * about normal, with variance 2 k / ((k - 1) (n - 2)) for k items and n persons (D. G. Bonett, Journal
 * of Educational and Behavioral Statistics 27, 2002, from memory). O(1).
 */
import type { Interval } from './wilson.ts';

/** Throws a RangeError for fewer than two items or three persons, and on a KR-20 above 1. */
export function kr20Interval(
  kr20: number,
  items: number,
  persons: number,
  z = 1.959963984540054,
): Interval {
  if (!(items >= 2 && persons >= 3 && kr20 <= 1 && z > 0)) {
    throw new RangeError('It takes two items, three persons, and a KR-20 of 1 at most.');
  }
  const error = Math.sqrt((2 * items) / ((items - 1) * (persons - 2)));
  return { low: 1 - (1 - kr20) * Math.exp(z * error), high: 1 - (1 - kr20) * Math.exp(-z * error) };
}
