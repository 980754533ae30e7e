/**
 * The temperature at which the water of the air begins to settle on a surface, by the form of G. Magnus:
 *
 *   g = ln(RH) + a T / (b + T)     Td = b g / (a - g)     T and Td in °C, a = 17.625, b = 243.04 °C
 *
 * O. A. Alduchov and R. E. Eskridge gave the constants ("Improved Magnus form approximation of saturation
 * vapor pressure", Journal of Applied Meteorology 35, 1996; from memory). Stated as true to 0.35 C° from
 * -40 °C to 60 °C: https://www.calcipedia.org/calculators/dew-point-calculator. A logarithm has no exact
 * value, so this is reckoned in floats and then rounded to a thousandth of a kelvin, far finer than the
 * formula is true; a humidity of 100 % gives the air's own temperature, to the same thousandth.
 */
import { amountIn, quantity } from '#engine/measure/conversion.ts';
import { subtract } from '#engine/measure/arithmetic.ts';
import { expectA, type Quantity } from '#engine/measure/quantity.ts';
import { approximate, rational } from '#engine/measure/rational.ts';
import type { Weather } from './site.ts';

const a = 17.625;
const b = 243.04;
const coldest = -40;
const hottest = 60;

/** Undefined where the air holds no water at all, and beyond the temperatures that the form is stated for. */
export function dewPoint(
  air: Quantity<'temperature'>,
  humidity: Quantity<'ratio'>,
): Quantity<'temperature'> | undefined {
  const celsius = approximate(amountIn(air, '°C'));
  const share = approximate(humidity.value);
  if (share <= 0 || celsius < coldest || celsius > hottest) return undefined;
  const g = Math.log(share) + (a * celsius) / (b + celsius);
  return quantity(rational(Math.round((1000 * b * g) / (a - g)), 1000), '°C');
}

/**
 * How far the surface is above the dew point, below 0 where dew stands on it. Undefined where the
 * weather leaves open what that takes, or there is no dew point.
 */
export function marginAboveDewPoint(
  weather: Weather,
): Quantity<'temperature-difference'> | undefined {
  const [air, surface, humidity] = dewConditions.map((condition) => weather.get(condition));
  if (!air || !surface || !humidity) return undefined;
  const dew = dewPoint(expectA(air, 'temperature'), expectA(humidity, 'ratio'));
  return dew && subtract(expectA(surface, 'temperature'), dew);
}

/** What has to be measured to tell whether dew can form on a surface. */
export const dewConditions = [
  'air-temperature',
  'surface-temperature',
  'relative-humidity',
] as const;
