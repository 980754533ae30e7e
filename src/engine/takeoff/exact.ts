/**
 * Exact fractions for working out thousands of problems: two whole numbers that a float holds, as long
 * as all products stay below 2^53, and big integers from there on. Always in lowest terms, the lower
 * one above 0. The answers are those of fraction.js, which a test holds; on numbers of the trade it is
 * several times as fast.
 */
import { rational, type Rational, type Rounding } from '#engine/measure/rational.ts';

type Small = { readonly n: number; readonly d: number };
type Large = { readonly n: bigint; readonly d: bigint };

/** Small wherever it can be, so that equal fractions have equal parts. */
export type Exact = Small | Large;

const limit = Number.MAX_SAFE_INTEGER;

const isSmall = (value: Exact): value is Small => typeof value.d === 'number';

const isSafe = (value: number): boolean => value <= limit && value >= -limit;

function gcd(a: number, b: number): number {
  let large = a < 0 ? -a : a;
  let small = b;
  while (small !== 0) {
    const rest = large % small;
    large = small;
    small = rest;
  }
  return large;
}

function bigGcd(a: bigint, b: bigint): bigint {
  let [large, small] = [a < 0n ? -a : a, b];
  while (small !== 0n) [large, small] = [small, large % small];
  return large;
}

/** Of safe whole numbers, d above 0. */
function reduced(n: number, d: number): Small {
  if (d === 1) return { n, d };
  const common = gcd(n, d);
  return { n: n / common, d: d / common };
}

/** Of any whole numbers, d above 0. */
function reducedLarge(n: bigint, d: bigint): Exact {
  const common = bigGcd(n, d);
  const [top, bottom] = [n / common, d / common];
  return isSafe(Number(top)) && isSafe(Number(bottom))
    ? { n: Number(top), d: Number(bottom) }
    : { n: top, d: bottom };
}

const large = ({ n, d }: Exact): Large => ({ n: BigInt(n), d: BigInt(d) });

export const whole = (value: number): Exact => ({ n: value, d: 1 });

export const exactFrom = ({ s, n, d }: Rational): Exact => reducedLarge(s * n, d);

export const rationalFrom = ({ n, d }: Exact): Rational => rational(BigInt(n), BigInt(d));

export function add(a: Exact, b: Exact): Exact {
  if (isSmall(a) && isSmall(b)) {
    if (a.d === b.d) {
      const n = a.n + b.n;
      if (isSafe(n)) return reduced(n, a.d);
    }
    const left = a.n * b.d;
    const right = b.n * a.d;
    const d = a.d * b.d;
    if (isSafe(left) && isSafe(right) && isSafe(d) && isSafe(left + right)) {
      return reduced(left + right, d);
    }
  }
  const [x, y] = [large(a), large(b)];
  return reducedLarge(x.n * y.d + y.n * x.d, x.d * y.d);
}

export const negate = (a: Exact): Exact =>
  // Never -0, which is not 0 to Object.is.
  isSmall(a) ? { n: 0 - a.n, d: a.d } : { n: -a.n, d: a.d };

export const subtract = (a: Exact, b: Exact): Exact => add(a, negate(b));

export function multiply(a: Exact, b: Exact): Exact {
  if (isSmall(a) && isSmall(b)) {
    const n = a.n * b.n;
    const d = a.d * b.d;
    if (isSafe(n) && isSafe(d)) return reduced(n + 0, d);
  }
  const [x, y] = [large(a), large(b)];
  return reducedLarge(x.n * y.n, x.d * y.d);
}

export const isZero = ({ n }: Exact): boolean => n === 0;

/** Below 0, 0 or above 0. */
export const signOf = ({ n }: Exact): number => (n < 0 ? -1 : n > 0 ? 1 : 0);

/** Throws a RangeError on zero below the line. */
export function divide(a: Exact, b: Exact): Exact {
  if (isZero(b)) throw new RangeError('Division by zero.');
  const upended = isSmall(b) ? { n: b.d, d: b.n } : { n: b.d, d: b.n };
  const positive = upended.d > 0 ? upended : { n: -upended.n, d: -upended.d };
  return multiply(a, positive as Exact);
}

/** To a whole power above 0. */
export function power(base: Exact, exponent: number): Exact {
  let result = base;
  for (let times = 1; times < exponent; times += 1) result = multiply(result, base);
  return result;
}

export function compare(a: Exact, b: Exact): number {
  if (isSmall(a) && isSmall(b)) {
    const left = a.n * b.d;
    const right = b.n * a.d;
    if (isSafe(left) && isSafe(right)) return left - right;
  }
  return signOf(subtract(a, b));
}

export const equals = (a: Exact, b: Exact): boolean => a.n === b.n && a.d === b.d;

/** The whole number at or below. */
export function floor(value: Exact): Exact {
  if (isSmall(value)) {
    const over = value.n % value.d;
    return whole((value.n - over) / value.d - (over < 0 ? 1 : 0));
  }
  const over = value.n % value.d;
  return reducedLarge((value.n - over) / value.d - (over < 0n ? 1n : 0n), 1n);
}

const one = whole(1);
const half: Exact = { n: 1, d: 2 };

/**
 * The multiple of `step` that a value rounds to; a half goes away from zero. Throws a RangeError where
 * the step is not above 0.
 */
export function roundTo(value: Exact, step: Exact, how: Rounding): Exact {
  if (signOf(step) <= 0) throw new RangeError('A rounding step is above 0.');
  const steps = equals(step, one) ? value : divide(value, step);
  return multiply(wholeSteps(steps, how), step);
}

function wholeSteps(steps: Exact, how: Rounding): Exact {
  if (how === 'down') return floor(steps);
  if (how === 'up') return negate(floor(negate(steps)));
  return signOf(steps) < 0 ? negate(floor(add(negate(steps), half))) : floor(add(steps, half));
}

/** A fiftieth of a step: who rounds on the way to three figures lands within it. Our own choice. */
const margin = 50;

/**
 * Whether a value rounds the way it does by a hair, so that an honest calculation with a pocket
 * calculator can come out on the other side: nearly a half for `nearest`; just above or below a
 * multiple for `up` and `down`. A multiple itself hangs on nothing.
 */
export function hangsOn(value: Exact, step: Exact, how: Rounding): boolean {
  const steps = divide(value, step);
  const part = subtract(steps, floor(steps));
  if (isZero(part)) return false;
  const off = how === 'nearest' ? subtract(part, half) : part;
  const [n, d] = [Number(off.n), Number(off.d)];
  return Math.abs(n) * margin < d || (how !== 'nearest' && (d - n) * margin < d);
}
