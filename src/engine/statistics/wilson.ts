/**
 * The score interval for a proportion: the rates that so many hits in so many trials do not speak
 * against. Sound for few trials and for rates near 0 and 1, where the textbook interval is not
 * (E. B. Wilson, "Probable inference, the law of succession, and statistical inference", JASA 22,
 * 1927). Holds for trials that do not depend on each other. O(1).
 */
export type Interval = { readonly low: number; readonly high: number };

/** Of the standard normal distribution, the point that leaves 2.5 % above it. */
const twoSided95 = 1.959963984540054;

/**
 * Both ends included, from 0 to 1. Throws a RangeError where there are no trials, or where hits are
 * not a whole number from 0 to the number of trials.
 */
export function wilson(hits: number, trials: number, z = twoSided95): Interval {
  if (!Number.isSafeInteger(trials) || trials <= 0) {
    throw new RangeError(`An interval needs one trial or more, a whole number, not ${trials}.`);
  }
  if (!Number.isSafeInteger(hits) || hits < 0 || hits > trials) {
    throw new RangeError(`Hits are a whole number from 0 to ${trials}, not ${hits}.`);
  }
  if (!(z > 0)) throw new RangeError(`The width is a number above 0, not ${z}.`);
  const rate = hits / trials;
  const square = (z * z) / trials;
  const middle = rate + square / 2;
  const reach = z * Math.sqrt((rate * (1 - rate)) / trials + square / (4 * trials));
  return {
    // At the ends the interval is closed by 0 and by 1 exactly, which floats only come near.
    low: hits === 0 ? 0 : (middle - reach) / (1 + square),
    high: hits === trials ? 1 : (middle + reach) / (1 + square),
  };
}
