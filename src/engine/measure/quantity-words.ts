/**
 * A quantity as the trade in North America says it: which unit a number of a data sheet is read in on
 * site is common practice. Nothing is rounded away that a tape, a clock or a thermometer shows.
 */
import { amountIn } from '#engine/measure/conversion.ts';
import { formatExact } from '#engine/measure/format-exact.ts';
import { formatLength } from '#engine/measure/format-length.ts';
import { formatDecimal } from '#engine/measure/format-number.ts';
import { formatQuantity } from '#engine/measure/format-quantity.ts';
import { parseUnit } from '#engine/measure/parse-unit.ts';
import { isA, type Quantity } from '#engine/measure/quantity.ts';
import { isWhole, one, rational, type Rational } from '#engine/measure/rational.ts';
import type { Language } from '#engine/text.ts';

export function quantityWords(q: Quantity, language: Language): string {
  if (isA(q, 'length')) return lengthWords(q, language);
  if (isA(q, 'time')) return timeWords(q, language);
  if (isA(q, 'temperature')) return formatQuantity(q, { unit: '°F', places: 1 }, language);
  if (isA(q, 'temperature-difference'))
    return formatQuantity(q, { unit: 'F°', places: 1 }, language);
  if (isA(q, 'angle')) return formatQuantity(q, '°', language);
  if (isA(q, 'area')) return formatQuantity(q, 'ft2', language);
  if (isA(q, 'volume')) return volumeWords(q, language);
  if (isA(q, 'money')) return formatQuantity(q, '$', language);
  if (isA(q, 'ratio') && q.value.lt(one)) return formatQuantity(q, '%', language);
  if (isA(q, 'ratio') || isA(q, 'count')) return formatDecimal(q.value, 2);
  return coverageWords(q, language) ?? formatExact(q);
}

const sixteenth = rational(1, 16);
const longest = rational(60);

/** In inches up to 5 ft, then in feet; a sheet thinner than a tape can show, in mils. */
function lengthWords(q: Quantity<'length'>, language: Language): string {
  const inches = amountIn(q, 'in');
  const mils = inches.mul(1000n);
  const onTape = isWhole(inches.mul(16n));
  if (!onTape && inches.lt(rational(1, 4)) && isWhole(mils))
    return formatQuantity(q, 'mil', language);
  if (inches.abs().lt(longest))
    return formatQuantity(q, { unit: 'in', nearest: sixteenth }, language);
  return isWhole(inches.div(12n))
    ? formatQuantity(q, 'ft', language)
    : formatLength(q, { system: 'us' });
}

/** Up to two hours in minutes, up to two days in hours. A rest of a second counts as a whole one. */
function timeWords(q: Quantity<'time'>, language: Language): string {
  const seconds = q.value.ceil();
  const write = (amount: Rational, unit: string): string => `${formatDecimal(amount, 2)} ${unit}`;
  if (seconds.lt(60n)) return write(seconds, 's');
  if (seconds.gt(172_800n)) return formatQuantity(q, 'day', language);
  if (seconds.gt(7200n)) return formatQuantity(q, 'h', language);
  const minutes = seconds.div(60n).floor();
  const rest = seconds.sub(minutes.mul(60n));
  const whole = write(minutes, 'min');
  return rest.equals(0n) ? whole : `${whole} ${write(rest, 's')}`;
}

const volumeWords = (q: Quantity<'volume'>, language: Language): string =>
  isWhole(amountIn(q, 'gal').mul(4n))
    ? formatQuantity(q, 'gal', language)
    : formatQuantity(q, 'fl oz', language);

function coverageWords(q: Quantity, language: Language): string | undefined {
  const coverage = parseUnit('ft2/gal');
  const isCoverage =
    coverage.ok && coverage.value.dimension.powers.length === q.dimension.powers.length;
  return isCoverage ? formatQuantity(q, coverage.value, language) : undefined;
}
