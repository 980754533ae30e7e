/**
 * Between quantities and the bare numbers of a slate. A slate counts in inches where the engine counts
 * in metres, so that lengths of the trade are whole numbers or sixteenths, and stay small.
 */
import type { Dimension } from '#engine/measure/dimension.ts';
import { ofBaseUnits, type Quantity } from '#engine/measure/quantity.ts';
import { one, rational, type Rational } from '#engine/measure/rational.ts';
import { exactFrom, type Exact } from './exact.ts';

const inch = rational(254, 10_000);
const powers = new Map<number, Rational>([[0, one]]);

function inchTo(power: number): Rational {
  const known = powers.get(power);
  if (known) return known;
  const size = power > 0 ? inch.pow(BigInt(power)) : one.div(inch.pow(BigInt(-power)));
  powers.set(power, size);
  return size;
}

const entered = new WeakMap<Quantity, Exact>();

/** The same quantity gives the same number, worked out once. */
export function enter(q: Quantity): Exact {
  const known = entered.get(q);
  if (known) return known;
  const { length } = q.dimension.powers;
  const value = exactFrom(length === 0 ? q.value : q.value.div(inchTo(length)));
  entered.set(q, value);
  return value;
}

export function leave(value: Exact, dimension: Dimension): Quantity {
  const { length } = dimension.powers;
  const [n, d] = [BigInt(value.n), BigInt(value.d)];
  if (length === 0) return ofBaseUnits(rational(n, d), dimension);
  const inches = inchTo(length);
  return ofBaseUnits(rational(n * inches.n, d * inches.d), dimension);
}
