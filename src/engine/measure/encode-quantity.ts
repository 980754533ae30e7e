/**
 * Quantities as plain values for JSON and for the database. The form depends on no unit and on no
 * rule for reading text, so that what was stored years ago still means the same.
 */
import { ok } from '#engine/result.ts';
import type { Result } from '#engine/result.ts';
import type { Text } from '#engine/text.ts';
import { bases, dimension, dimensionNames, dimensionOf } from './dimension.ts';
import type { Base, Dimension, DimensionName } from './dimension.ts';
import { measureFault } from './fault.ts';
import type { MeasureFault } from './fault.ts';
import { ofBaseUnits } from './quantity.ts';
import type { Quantity } from './quantity.ts';
import { rational, rationalText } from './rational.ts';

export interface EncodedQuantity {
  /** In base units: `381/100`, `-5`. */
  readonly value: string;
  /** Its name, or for a product the powers that are not 0. */
  readonly dimension: Exclude<DimensionName, 'product'> | Readonly<Partial<Record<Base, number>>>;
}

const largestPower = 9;
const longestValue = 2000;

export const encodeQuantity = ({ value, dimension }: Quantity): EncodedQuantity => ({
  value: rationalText(value),
  dimension:
    dimension.name === 'product'
      ? Object.fromEntries(
          bases
            .filter((base) => dimension.powers[base] !== 0)
            .map((base) => [base, dimension.powers[base]]),
        )
      : dimension.name,
});

const decodeDimension = (encoded: unknown): Dimension | undefined => {
  const name = dimensionNames.find((name) => name === encoded);
  if (name !== undefined) return dimension(name);
  if (typeof encoded !== 'object' || encoded === null) return undefined;
  const powers = Object.entries(encoded) as readonly (readonly [string, unknown])[];
  const sound = powers.every(
    ([base, power]) =>
      bases.some((known) => known === base) &&
      Number.isInteger(power) &&
      Math.abs(Number(power)) <= largestPower,
  );
  return sound ? dimensionOf(Object.fromEntries(powers)) : undefined;
};

export const decodeQuantity = (encoded: unknown): Result<Quantity, MeasureFault> => {
  const refuse = (message: Text): Result<never, MeasureFault> =>
    measureFault('NOT_ENCODED', { at: 0, end: 0 }, message);
  if (typeof encoded !== 'object' || encoded === null) {
    return refuse({
      en: 'A stored quantity is an object with a value and a dimension.',
      es: 'Una cantidad guardada es un objeto con valor (value) y dimensión (dimension).',
    });
  }
  const { value, dimension: kind } = encoded as Readonly<Record<string, unknown>>;
  const match =
    typeof value === 'string' && value.length <= longestValue
      ? /^(-?\d+)(?:\/([1-9]\d*))?$/.exec(value)
      : null;
  if (match === null) {
    return refuse({
      en: 'The value of a stored quantity is text such as -5 or 381/100.',
      es: 'El valor (value) de una cantidad guardada es un texto como -5 o 381/100.',
    });
  }
  const dimension = decodeDimension(kind);
  if (dimension === undefined) {
    return refuse({
      en: 'The dimension of a stored quantity is a name such as length, or powers such as {"length": -1}.',
      es: 'La dimensión de una cantidad guardada es un nombre como length, o potencias como {"length": -1}.',
    });
  }
  return ok(ofBaseUnits(rational(BigInt(match[1] ?? 0), BigInt(match[2] ?? 1)), dimension));
};
