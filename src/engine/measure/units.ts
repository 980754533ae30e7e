/**
 * Every unit there is, by its English symbol, with its exact size in the base unit and what people
 * write for it on site and on a telephone's keyboard. Upper case, accents, full stops after
 * abbreviations and spaces do not matter; typographic marks count as their plain twins.
 *
 * Where two units share an alias, the first stands unless the other's dimension was asked for: °F is
 * a temperature, and a temperature difference only where one is wanted.
 *
 * Sources of the sizes: NIST Handbook 44, Appendix C (1 in = 25.4 mm and 1 US gal = 231 in³, both
 * exact; 128 fl oz to the gallon); NIST SP 811 (2008), B.8 (t/°F = 1.8 t/°C + 32, 0 °C = 273.15 K).
 * The C° and F° of a difference, beside °C and °F of a point, are school-book usage and no standard.
 */
import { dimension } from './dimension.ts';
import type { DimensionName } from './dimension.ts';
import { one, rational, zero } from './rational.ts';
import type { Rational } from './rational.ts';
import { unitOne } from './unit.ts';
import type { NamedUnit } from './unit.ts';

/** The same label for any number, or one and many. */
type Words = string | readonly [one: string, many: string];

const both = (words: Words): readonly [string, string] =>
  typeof words === 'string' ? [words, words] : words;

const unit = <D extends Exclude<DimensionName, 'product'>>(
  of: D,
  size: Rational,
  en: Words,
  es: Words,
  aliases: string,
  more: Partial<Pick<NamedUnit, 'zero' | 'set' | 'series'>> = {},
): NamedUnit<D> => ({
  dimension: dimension(of),
  size,
  zero,
  label: { en: both(en), es: both(es) },
  set: 'after',
  aliases: aliases.split(', '),
  ...more,
});

const inch = rational(254, 10_000);
const foot = inch.mul(12n);
const gallon = inch.pow(3n).mul(231n);
const centi = rational(1, 100);
const milli = rational(1, 1000);
const fahrenheit = rational(5, 9);

const tape = { series: 'yards, feet and inches' };
const metric = { series: 'metres' };
const liquid = { series: 'gallons' };
const litres = { series: 'litres' };
const clock = { series: 'days and hours' };

export const units = {
  in: unit('length', inch, 'in', 'pulg', `", '', inch, inches, pulgada, pulgadas`, tape),
  ft: unit(
    'length',
    foot,
    'ft',
    ['pie', 'pies'],
    `', foot, feet, lf, lin ft, linear foot, linear feet, pie lineal, pies lineales`,
    tape,
  ),
  yd: unit('length', foot.mul(3n), 'yd', 'yd', 'yard, yards, yarda, yardas', tape),
  mil: unit('length', inch.div(1000n), 'mil', 'mil', 'mils, thou, milesima, milesimas'),
  mm: unit(
    'length',
    milli,
    'mm',
    'mm',
    'millimeter, millimeters, millimetre, millimetres, milimetro, milimetros',
    metric,
  ),
  cm: unit(
    'length',
    centi,
    'cm',
    'cm',
    'centimeter, centimeters, centimetre, centimetres, centimetro, centimetros',
    metric,
  ),
  m: unit('length', one, 'm', 'm', 'meter, meters, metre, metres, metro, metros', metric),

  in2: unit(
    'area',
    inch.pow(2n),
    'in²',
    'pulg²',
    'sq in, square inch, square inches, pulgada cuadrada, pulgadas cuadradas',
  ),
  ft2: unit(
    'area',
    foot.pow(2n),
    'ft²',
    'pie²',
    'sq ft, sf, square foot, square feet, pie cuadrado, pies cuadrados',
  ),
  yd2: unit('area', foot.mul(3n).pow(2n), 'yd²', 'yd²', 'sq yd, sy, square yard, square yards'),
  m2: unit(
    'area',
    one,
    'm²',
    'm²',
    'sq m, square meter, square meters, square metre, square metres, metro cuadrado, metros cuadrados',
  ),

  in3: unit(
    'volume',
    inch.pow(3n),
    'in³',
    'pulg³',
    'cu in, cubic inch, cubic inches, pulgada cubica, pulgadas cubicas',
  ),
  ft3: unit(
    'volume',
    foot.pow(3n),
    'ft³',
    'pie³',
    'cu ft, cubic foot, cubic feet, pie cubico, pies cubicos',
  ),
  m3: unit(
    'volume',
    one,
    'm³',
    'm³',
    'cu m, cubic meter, cubic meters, cubic metre, cubic metres, metro cubico, metros cubicos',
  ),
  'fl oz': unit(
    'volume',
    gallon.div(128n),
    'fl oz',
    'oz líq',
    'oz, ounce, ounces, fluid ounce, fluid ounces, onza, onzas, onza liquida, onzas liquidas',
    liquid,
  ),
  gal: unit('volume', gallon, 'gal', 'gal', 'gals, gallon, gallons, galon, galones', liquid),
  mL: unit(
    'volume',
    milli.pow(2n),
    'mL',
    'mL',
    'milliliter, milliliters, millilitre, millilitres, mililitro, mililitros, cc',
    litres,
  ),
  L: unit('volume', milli, 'L', 'L', 'lt, liter, liters, litre, litres, litro, litros', litres),

  s: unit('time', one, 's', 's', 'sec, secs, second, seconds, seg, segundo, segundos', clock),
  min: unit('time', rational(60), 'min', 'min', 'mins, minute, minutes, minuto, minutos', clock),
  h: unit('time', rational(3600), 'h', 'h', 'hr, hrs, hour, hours, hora, horas', clock),
  day: unit('time', rational(86_400), ['day', 'days'], ['día', 'días'], 'd', clock),

  K: unit('temperature', one, 'K', 'K', 'kelvin, kelvins'),
  '°C': unit(
    'temperature',
    one,
    '°C',
    '°C',
    'c, ℃, deg c, celsius, degree celsius, degrees celsius, grado c, grados c, grados celsius, grados centigrados',
    { zero: rational(27_315, 100) },
  ),
  '°F': unit(
    'temperature',
    fahrenheit,
    '°F',
    '°F',
    'f, ℉, deg f, fahrenheit, degree fahrenheit, degrees fahrenheit, grado f, grados f, grados fahrenheit',
    { zero: rational(45_967, 100).mul(fahrenheit) },
  ),
  'C°': unit(
    'temperature-difference',
    one,
    'C°',
    'C°',
    '°c, c, ℃, deg c, celsius, degree celsius, degrees celsius, grado c, grados c, grados celsius, grados centigrados, celsius degree, celsius degrees, k, kelvin, kelvins',
  ),
  'F°': unit(
    'temperature-difference',
    fahrenheit,
    'F°',
    'F°',
    '°f, f, ℉, deg f, fahrenheit, degree fahrenheit, degrees fahrenheit, grado f, grados f, grados fahrenheit, fahrenheit degree, fahrenheit degrees',
  ),

  '°': unit('angle', one, '°', '°', 'deg, degree, degrees, grado, grados', { set: 'against' }),

  each: unit(
    'count',
    one,
    ['piece', 'pieces'],
    ['pieza', 'piezas'],
    'ea, pc, pcs, pza, pzas, pz, c/u, cada una, cada uno',
  ),
  '%': unit('ratio', centi, '%', '%', 'percent, per cent, pct, por ciento'),
  '1': { ...unitOne, dimension: dimension('ratio'), aliases: [] },

  $: unit('money', one, '$', '$', 'usd, dollar, dollars, dolar, dolares', { set: 'before' }),
} as const satisfies Readonly<Record<string, NamedUnit>>;

/** The ids of the units of a dimension: `UnitId<'length'>` is 'in' | 'ft' | ... */
export type UnitId<D extends DimensionName = DimensionName> = {
  [U in keyof typeof units]: (typeof units)[U] extends NamedUnit<D> ? U : never;
}[keyof typeof units];

export const unitIds = Object.keys(units) as readonly UnitId[];
