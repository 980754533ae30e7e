import Fraction from 'fraction.js';

type Exact = Rational | bigint;

/**
 * An exact rational number in lowest terms: s · n / d, where s is the sign, n ≥ 0 and d ≥ 1.
 *
 * A view of fraction.js that takes no `number`: a float would come in as the nearest fraction with a
 * small denominator, which is not the number that was meant.
 */
export interface Rational {
  readonly s: bigint;
  readonly n: bigint;
  readonly d: bigint;
  add(other: Exact): Rational;
  sub(other: Exact): Rational;
  mul(other: Exact): Rational;
  /** Throws on zero. */
  div(other: Exact): Rational;
  pow(exponent: bigint): Rational;
  neg(): Rational;
  abs(): Rational;
  floor(): Rational;
  ceil(): Rational;
  compare(other: Exact): number;
  equals(other: Exact): boolean;
  lt(other: Exact): boolean;
  lte(other: Exact): boolean;
  gt(other: Exact): boolean;
  gte(other: Exact): boolean;
}

/** Numerator over denominator. Throws a RangeError where either is no whole number, or below is 0. */
export const rational = (
  numerator: bigint | number,
  denominator: bigint | number = 1n,
): Rational => {
  for (const part of [numerator, denominator]) {
    if (typeof part === 'number' && !Number.isSafeInteger(part)) {
      throw new RangeError(`${part} is not a whole number that a float holds exactly.`);
    }
  }
  if (BigInt(denominator) === 0n) throw new RangeError('A fraction has no 0 below the line.');
  return new Fraction(BigInt(numerator), BigInt(denominator));
};

export const zero = rational(0);
export const one = rational(1);

export const isWhole = (value: Rational): boolean => value.d === 1n;

/** `nearest` takes an exact half away from zero; `up` and `down` go towards plus and minus infinity. */
export type Rounding = 'nearest' | 'up' | 'down';

/** The multiple of `step` that `value` rounds to. Throws a RangeError where step is not above 0. */
export const roundToMultiple = (
  value: Rational,
  step: Rational,
  rounding: Rounding = 'nearest',
): Rational => {
  if (step.lte(0n)) throw new RangeError('A rounding step is above 0.');
  const steps = value.div(step);
  if (rounding === 'up') return steps.ceil().mul(step);
  if (rounding === 'down') return steps.floor().mul(step);
  return steps.abs().add(rational(1, 2)).floor().mul(steps.s).mul(step);
};

/** `-7/3`, or `5` where it is whole. */
export const rationalText = (value: Rational): string =>
  `${value.s * value.n}${isWhole(value) ? '' : `/${value.d}`}`;

/**
 * A float within two units in its last place, for drawing and for comparing with floats; never to
 * calculate on. Numbers of more than a thousand bits are cut to that first, since a float has no
 * room for them.
 */
export const approximate = (value: Rational): number => {
  const bits = 4 * Math.max(value.n.toString(16).length, value.d.toString(16).length);
  const surplus = BigInt(Math.max(0, bits - 1000));
  return (Number(value.s) * Number(value.n >> surplus)) / Number(value.d >> surplus);
};
