import { amountIn } from '#engine/measure/conversion.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import { rational } from '#engine/measure/rational.ts';
import type { Unit } from '#engine/measure/unit.ts';
import { unitIds, units } from '#engine/measure/units.ts';
import type { Reading } from './read-answer.ts';

/** What was written, and the unit in which that number would have been right. */
export type Meant = { readonly written: Unit; readonly meant: Unit };

/** As closely as people write an amount. */
const tolerance = rational(1, 1000);

/** Where the number is right and only the unit beside it is not. */
export function otherUnit({ value, unit }: Reading, right: Quantity): Meant | undefined {
  if (!unit || typeof value === 'boolean' || right.dimension.name === 'temperature')
    return undefined;
  const amount = amountIn(value, unit);
  const meant = unitIds
    .map((id): Unit => units[id])
    .filter(
      ({ dimension, size }) => dimension.name === right.dimension.name && !size.equals(unit.size),
    )
    .find((other) => {
      const wanted = amountIn(right, other);
      return amount.sub(wanted).abs().lte(wanted.abs().mul(tolerance));
    });
  return meant && { written: unit, meant };
}
