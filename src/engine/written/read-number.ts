import { quantity } from '#engine/measure/conversion.ts';
import { commonDimension } from '#engine/measure/dimension.ts';
import type { MeasureFault } from '#engine/measure/fault.ts';
import { parseQuantity } from '#engine/measure/parse-quantity.ts';
import { parseUnit } from '#engine/measure/parse-unit.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import type { Unit } from '#engine/measure/unit.ts';
import { ok, type Result } from '#engine/result.ts';

/** The unit that a question asks in; the compiler has read it before. */
export function unitNamed(name: string): Unit {
  const unit = parseUnit(name);
  if (!unit.ok) throw new RangeError(unit.error.message.en);
  return unit.value;
}

/**
 * The answer as the trade writes it: `8`, `8 in`, `8"`, `20 cm`. A number without a unit is in the asked
 * one. What is of another kind than asked is read as what it is.
 */
export function readNumber(text: string, unit: Unit): Result<Quantity, MeasureFault> {
  const alone = numberAlone(text, unit);
  if (alone && isWithoutUnit(text)) return ok(alone);
  const read = parseQuantity(
    text,
    unit.dimension.name === 'product' ? undefined : unit.dimension.name,
  );
  if (read.ok && commonDimension(read.value.dimension, unit.dimension)) return read;
  const other = parseQuantity(text);
  if (other.ok) return other;
  return alone && isCounted(unit) ? ok(alone) : read;
}

/** The number as if the asked unit stood beside it, whatever stands there. */
export function numberAlone(text: string, unit: Unit): Quantity | undefined {
  const [digits = ''] = /^[^\p{L}°º%$"'”’″′²³]*/u.exec(text.trim().replace(/^\$/, '')) ?? [];
  const read = parseQuantity(digits);
  return read.ok ? quantity(read.value.value, unit) : undefined;
}

/** Of a plain number the words behind it are no unit: `2 screws`. */
const isCounted = ({ dimension, label }: Unit): boolean =>
  dimension.name === 'count' || (dimension.name === 'ratio' && label.en[0] === '');

const isWithoutUnit = (text: string): boolean => /^[^\p{L}°º%$"'”’″′]*$/u.test(text);
