import type { DimensionName } from './dimension.ts';
import { commonDimension, dimensionPhrase } from './dimension.ts';
import { DimensionError, ofBaseUnits } from './quantity.ts';
import type { Quantity } from './quantity.ts';
import { rational } from './rational.ts';
import type { Rational } from './rational.ts';
import type { Unit } from './unit.ts';
import { units } from './units.ts';
import type { UnitId } from './units.ts';

/** A unit of the table by its id, or one that was read or put together. */
export type UnitOf<D extends DimensionName> = UnitId<D> | Unit<D>;

export const unitOf = (unit: UnitOf<DimensionName>): Unit =>
  typeof unit === 'string' ? units[unit] : unit;

/** `quantity(8, 'in')`, `quantity(rational(13, 2), 'ft')`. A number has to be whole. */
export function quantity<U extends UnitId>(
  amount: Rational | bigint | number,
  unit: U,
): Quantity<(typeof units)[U]['dimension']['name']>;
export function quantity<D extends DimensionName>(
  amount: Rational | bigint | number,
  unit: Unit<D>,
): Quantity<D>;
export function quantity(
  amount: Rational | bigint | number,
  unit: UnitOf<DimensionName>,
): Quantity {
  const { dimension, size, zero } = unitOf(unit);
  const exact = typeof amount === 'object' ? amount : rational(amount);
  return ofBaseUnits(exact.mul(size).add(zero), dimension);
}

/** How many of the unit the quantity is. Throws a DimensionError where it is of another kind. */
export const amountIn = <D extends DimensionName>(
  q: Quantity<D>,
  unit: UnitOf<NoInfer<D>>,
): Rational => {
  const { dimension, size, zero } = unitOf(unit);
  if (commonDimension(q.dimension, dimension) === undefined) {
    throw new DimensionError(
      `Cannot measure ${dimensionPhrase(q.dimension)} in a unit of ${dimensionPhrase(dimension)}.`,
    );
  }
  return q.value.sub(zero).div(size);
};
