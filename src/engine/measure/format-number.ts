import { one, rationalText, roundToMultiple } from './rational.ts';
import type { Rational } from './rational.ts';

/**
 * Rounded to so many decimal places, an exact half away from zero, without needless zeros at the end
 * unless `padded`: 12.5 in every language. Thousands are not grouped, so what is written is read back.
 */
export const formatDecimal = (value: Rational, places: number, padded = false): string => {
  const scale = 10n ** BigInt(places);
  const rounded = roundToMultiple(value.mul(scale), one);
  const digits = rounded.n.toString().padStart(places + 1, '0');
  const whole = digits.slice(0, digits.length - places);
  const tenths = digits.slice(digits.length - places).replace(padded ? /$^/ : /0+$/, '');
  const sign = rounded.lt(0n) ? '-' : '';
  return `${sign}${whole}${tenths === '' ? '' : '.'}${tenths}`;
};

/** A mixed number of exactly this value: `6 1/2`, `1/2`, `-6 1/2`, `6`. */
export const formatMixed = (value: Rational): string => {
  const whole = value.abs().floor();
  const part = value.abs().sub(whole);
  const words = [
    ...(whole.equals(0n) && !part.equals(0n) ? [] : [rationalText(whole)]),
    ...(part.equals(0n) ? [] : [rationalText(part)]),
  ];
  return `${value.lt(0n) ? '-' : ''}${words.join(' ')}`;
};
