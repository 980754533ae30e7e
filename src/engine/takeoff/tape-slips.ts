/** Slips in writing a length that was worked out right. */
import { amountIn } from '#engine/measure/conversion.ts';
import { isA, type Quantity } from '#engine/measure/quantity.ts';
import { rational, type Rational } from '#engine/measure/rational.ts';
import type { Text } from '#engine/text.ts';

const inchesAsTenths: Text = {
  en: 'Inches are no tenths of a foot: 6 ft 9 in is 6.75 ft, not 6.9 ft. Divide the inches by 12, or write feet and inches.',
  es: 'Las pulgadas no son décimas de pie: 6 pies 9 pulg son 6.75 pies, no 6.9. Divida las pulgadas entre 12, o escriba pies y pulgadas.',
};

const fractionAsDecimal: Text = {
  en: 'A fraction of an inch is no decimal: 1/4 is 0.25, not 0.4 or 0.14. Divide the top by the bottom, or write the fraction.',
  es: 'Una fracción de pulgada no es un decimal: 1/4 es 0.25, no 0.4 ni 0.14. Divida lo de arriba entre lo de abajo, o escriba la fracción.',
};

/** The slips by which the right length becomes the one given. */
export function tapeSlips(
  given: Quantity,
  right: Quantity,
): readonly { readonly id: string; readonly tell: Text }[] {
  if (!isA(given, 'length') || !isA(right, 'length')) return [];
  const inches = amountIn(right, 'in');
  const found = [
    { id: 'inches-as-tenths', tell: inchesAsTenths, values: tenths(inches) },
    { id: 'fraction-as-decimal', tell: fractionAsDecimal, values: decimals(inches) },
  ];
  return found.filter(({ values }) => values.some((inch) => amountIn(given, 'in').equals(inch)));
}

/** 6'-9" taken for 6.9 ft; 6'-11" for 6.11 ft too. */
function tenths(inches: Rational): readonly Rational[] {
  const feet = inches.div(12n).floor();
  const rest = inches.sub(feet.mul(12n));
  if (rest.equals(0n) || feet.equals(0n)) return [];
  return [10n, 100n].map((base) => feet.add(rest.div(base)).mul(12n));
}

/** 8 1/4" taken for 8.4", for 8.14" or for 8.1". */
function decimals(inches: Rational): readonly Rational[] {
  const whole = inches.floor();
  const { n, d } = inches.sub(whole);
  if (n === 0n) return [];
  const decimal = (digits: bigint): Rational =>
    whole.add(rational(digits, 10n ** BigInt(digits.toString().length)));
  return [decimal(d), decimal(BigInt(`${n}${d}`)), decimal(n)].filter(
    (value) => !value.equals(inches),
  );
}
