import { absolute, roundTo } from './arithmetic.ts';
import { amountIn, quantity } from './conversion.ts';
import { formatDecimal, formatMixed } from './format-number.ts';
import type { Quantity } from './quantity.ts';
import { isWhole, rational, rationalText } from './rational.ts';
import type { Rational } from './rational.ts';

type Length = Quantity<'length'>;

/**
 * How a length is written: 12'-6 1/2" or 150 1/2" (to the nearest 1/16 in unless stated), 3.82 m or
 * 3820 mm (to the nearest millimetre). An exact half is rounded away from zero, as on a tape: 1/32 in
 * is written 1/16". Marks on a tape are common practice.
 */
export type LengthStyle =
  | {
      readonly system: 'us';
      readonly style?: 'feet-inches' | 'inches';
      readonly nearest?: Length;
    }
  | {
      readonly system: 'metric';
      readonly style?: 'metres' | 'millimetres';
      readonly nearest?: Length;
    };

export const sixteenth: Length = quantity(rational(1, 16), 'in');
export const millimetre: Length = quantity(1, 'mm');

/** The inches beside feet always show their whole number: 12'-0 1/2". */
const besideFeet = (inches: Rational): string =>
  isWhole(inches) || inches.gt(1n) ? formatMixed(inches) : `0 ${formatMixed(inches)}`;

const feetAndInches = (inches: Rational): string => {
  const feet = inches.div(12n).floor();
  return feet.equals(0n)
    ? `${formatMixed(inches)}"`
    : `${rationalText(feet)}'-${besideFeet(inches.sub(feet.mul(12n)))}"`;
};

/** As many decimals as the amount has, or the first twelve. */
const decimals = (amount: Rational): number => {
  const counts = Array.from({ length: 12 }, (_, places) => places);
  return counts.find((places) => isWhole(amount.mul(10n ** BigInt(places)))) ?? 12;
};

const magnitude = (length: Length, how: LengthStyle): string => {
  if (how.system === 'us') {
    const inches = amountIn(length, 'in');
    return how.style === 'inches' ? `${formatMixed(inches)}"` : feetAndInches(inches);
  }
  const unit = how.style === 'millimetres' ? 'mm' : 'm';
  const amount = amountIn(length, unit);
  return `${formatDecimal(amount, decimals(amount))} ${unit}`;
};

/** The length as the trade writes it, in every language, with one sign in front of all its parts. */
export const formatLength = (length: Length, how: LengthStyle): string => {
  const nearest = how.nearest ?? (how.system === 'us' ? sixteenth : millimetre);
  const rounded = roundTo(length, nearest);
  return `${rounded.value.lt(0n) ? '-' : ''}${magnitude(absolute(rounded), how)}`;
};
