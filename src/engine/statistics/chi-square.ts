/**
 * How often chance alone gives a chi-square of this size or more: the upper incomplete gamma function,
 * by its series below df/2 + 1 and its continued fraction above (M. Abramowitz, I. A. Stegun, "Handbook
 * of mathematical functions", 1964, 6.5.29, 6.5.31 and 26.4.19; the fraction by W. J. Lentz, Applied
 * Optics 15, 1976). About twelve digits; O(root of df) terms.
 */

/**
 * From 0 to 1. Throws a RangeError on a value below 0 and on degrees of freedom that are not whole and
 * above 0.
 */
export function chiSquareTail(value: number, degrees: number): number {
  if (!(value >= 0)) throw new RangeError(`A chi-square is 0 or more, not ${value}.`);
  if (!Number.isSafeInteger(degrees) || degrees < 1) {
    throw new RangeError(`Degrees of freedom are a whole number from 1, not ${degrees}.`);
  }
  if (value === 0) return 1;
  if (value === Infinity) return 0;
  const [shape, x] = [degrees / 2, value / 2];
  const scale = Math.exp(shape * Math.log(x) - x - logGammaOfHalf(degrees));
  return x < shape + 1 ? 1 - scale * series(shape, x) : scale * fraction(shape, x);
}

/** The logarithm of gamma(n / 2), by its recurrence from gamma(1/2) or gamma(1). */
function logGammaOfHalf(n: number): number {
  let log = n % 2 === 0 ? 0 : Math.log(Math.PI) / 2;
  for (let half = n % 2 === 0 ? 1 : 0.5; half < n / 2; half += 1) log += Math.log(half);
  return log;
}

function series(shape: number, x: number): number {
  let term = 1 / shape;
  let sum = term;
  for (let n = 1; term > sum * 1e-17; n += 1) {
    term *= x / (shape + n);
    sum += term;
  }
  return sum;
}

function fraction(shape: number, x: number): number {
  let b = x + 1 - shape;
  let c = Infinity;
  let d = 1 / b;
  let value = d;
  for (let n = 1; n < 10_000; n += 1) {
    const a = n * (shape - n);
    b += 2;
    d = 1 / (a * d + b);
    c = b + a / c;
    value *= c * d;
    if (Math.abs(c * d - 1) < 1e-15) break;
  }
  return value;
}
