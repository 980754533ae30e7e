import {
  commonDimension,
  dimension,
  dimensionOf,
  dimensionOfProduct,
  dimensionPhrase,
} from './dimension.ts';
import type { Dimension, DimensionName } from './dimension.ts';
import { DimensionError, isA, ofBaseUnits } from './quantity.ts';
import type { Quantity } from './quantity.ts';
import { roundToMultiple } from './rational.ts';
import type { Rational, Rounding } from './rational.ts';

const refuse = (verb: string, a: Quantity, b: Quantity): DimensionError =>
  new DimensionError(
    `Cannot ${verb} ${dimensionPhrase(a.dimension)} and ${dimensionPhrase(b.dimension)}.`,
  );

const scalable = (verb: string, q: Quantity): Quantity => {
  if (!isA(q, 'temperature')) return q;
  throw new DimensionError(`Cannot ${verb} a temperature: only a temperature difference.`);
};

const shared = (verb: string, a: Quantity, b: Quantity): Dimension => {
  const common = commonDimension(a.dimension, b.dimension);
  if (common === undefined) throw refuse(verb, a, b);
  return common;
};

type Point = Quantity<'temperature'>;
type Difference = Quantity<'temperature-difference'>;
/** What can be added: a difference to a temperature, otherwise like to like. */
type Addend<D extends DimensionName> = [D] extends ['temperature'] ? 'temperature-difference' : D;
/** Anything but what is known to be a temperature point. */
type Scalable<D extends DimensionName> = [D] extends ['temperature'] ? never : unknown;

export function add(a: Difference, b: Point): Point;
export function add<D extends DimensionName>(a: Quantity<D>, b: Quantity<Addend<D>>): Quantity<D>;
export function add(a: Quantity, b: Quantity): Quantity {
  const points = [a, b].filter((q) => isA(q, 'temperature')).length;
  if (points === 2) throw refuse('add', a, b);
  if (points === 1 && ![a, b].some((q) => isA(q, 'temperature-difference'))) {
    throw refuse('add', a, b);
  }
  const sum = points === 1 ? dimension('temperature') : shared('add', a, b);
  return ofBaseUnits(a.value.add(b.value), sum);
}

export function subtract(a: Point, b: Point): Difference;
export function subtract(a: Point, b: Difference): Point;
export function subtract<D extends DimensionName>(
  a: Quantity<D>,
  b: Quantity<NoInfer<D>>,
): Quantity<D>;
export function subtract(a: Quantity, b: Quantity): Quantity {
  const difference = a.value.sub(b.value);
  if (!isA(a, 'temperature')) return ofBaseUnits(difference, shared('subtract', a, b));
  if (isA(b, 'temperature')) return ofBaseUnits(difference, dimension('temperature-difference'));
  if (isA(b, 'temperature-difference')) return ofBaseUnits(difference, a.dimension);
  throw refuse('subtract', a, b);
}

/** Below 0 where a is the smaller, 0 where they are equal, above 0 where a is the larger. */
export const compare = <D extends DimensionName>(
  a: Quantity<D>,
  b: Quantity<NoInfer<D>>,
): number => {
  shared('compare', a, b);
  return a.value.compare(b.value);
};

export const equals = <D extends DimensionName>(a: Quantity<D>, b: Quantity<NoInfer<D>>): boolean =>
  compare(a, b) === 0;

/** Throws a DimensionError on a temperature point. */
export const multiply = (a: Quantity, b: Quantity): Quantity =>
  ofBaseUnits(
    scalable('multiply', a).value.mul(scalable('multiply', b).value),
    dimensionOfProduct(a.dimension, b.dimension),
  );

/** Throws a RangeError on division by zero, a DimensionError on a temperature point. */
export const divide = (a: Quantity, b: Quantity): Quantity => {
  scalable('divide', a);
  if (scalable('divide by', b).value.equals(0n)) throw new RangeError('Cannot divide by zero.');
  return ofBaseUnits(a.value.div(b.value), dimensionOfProduct(a.dimension, b.dimension, -1));
};

/** A whole power. Throws a RangeError on a negative power of zero. */
export const power = (q: Quantity, exponent: number): Quantity => {
  scalable('raise', q);
  if (exponent < 0 && q.value.equals(0n)) throw new RangeError('Cannot divide by zero.');
  return ofBaseUnits(
    q.value.pow(BigInt(exponent)),
    dimensionOfProduct(dimensionOf({}), q.dimension, exponent),
  );
};

export const scale = <D extends DimensionName>(
  q: Quantity<D> & Scalable<D>,
  by: Rational | bigint,
): Quantity<D> => ofBaseUnits(scalable('scale', q).value.mul(by), q.dimension);

export const negate = <D extends DimensionName>(q: Quantity<D> & Scalable<D>): Quantity<D> =>
  scale(q, -1n);

export const absolute = <D extends DimensionName>(q: Quantity<D> & Scalable<D>): Quantity<D> =>
  q.value.lt(0n) ? negate(q) : q;

/**
 * The multiple of `step` that q rounds to: `roundTo(run, sixteenth, 'up')`. A temperature is not a
 * multiple of anything. Throws a RangeError where step is not above 0.
 */
export const roundTo = <D extends DimensionName>(
  q: Quantity<D> & Scalable<D>,
  step: Quantity<NoInfer<D>>,
  rounding: Rounding = 'nearest',
): Quantity<D> => {
  scalable('round', q);
  shared('round', q, step);
  return ofBaseUnits(roundToMultiple(q.value, step.value, rounding), q.dimension);
};
