import { dimensionPhrase } from './dimension.ts';
import type { Dimension, DimensionName } from './dimension.ts';
import type { Rational } from './rational.ts';

declare const made: unique symbol;

/**
 * An exact amount of one dimension, in its base unit: m, m², m³, s, K, °, $ or one, and products of
 * these. Made from an amount and a unit, by reading text, or by calculating; never by hand.
 */
export interface Quantity<out D extends DimensionName = DimensionName> {
  readonly value: Rational;
  readonly dimension: Dimension<D>;
  readonly [made]: true;
}

/** Quantities that do not go together: a mistake of the program, never of what a person wrote. */
export class DimensionError extends Error {
  override readonly name = 'DimensionError';
}

/** From a value in base units. To start from an amount and a unit, see `quantity(8, 'in')`. */
export const ofBaseUnits = <D extends DimensionName>(
  value: Rational,
  dimension: Dimension<D>,
): Quantity<D> => ({ value, dimension }) as Quantity<D>;

export const isA = <D extends DimensionName>(q: Quantity, name: D): q is Quantity<D> =>
  q.dimension.name === name;

/** The same quantity, known to be of that dimension. Throws a DimensionError where it is not. */
export const expectA = <D extends DimensionName>(q: Quantity, name: D): Quantity<D> => {
  if (isA(q, name)) return q;
  throw new DimensionError(`Expected ${name}, found ${dimensionPhrase(q.dimension)}.`);
};
