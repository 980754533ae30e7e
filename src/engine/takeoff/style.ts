/** How a quantity of a problem is written: as the trade does, in the unit that the family asks for. */
import { amountIn } from '#engine/measure/conversion.ts';
import type { Dimension } from '#engine/measure/dimension.ts';
import { formatLength, type LengthStyle } from '#engine/measure/format-length.ts';
import { formatDecimal, formatMixed } from '#engine/measure/format-number.ts';
import { formatQuantity } from '#engine/measure/format-quantity.ts';
import { parseUnit } from '#engine/measure/parse-unit.ts';
import { isA, type Quantity } from '#engine/measure/quantity.ts';
import { isWhole, one, rational } from '#engine/measure/rational.ts';
import type { Unit } from '#engine/measure/unit.ts';
import type { Language, Text } from '#engine/text.ts';

/** On a tape: `12'-6 1/2"`, `150 1/2"`, `3.82 m`, `3820 mm`. */
export const tapeStyles = ['feet-inches', 'inches', 'metres', 'millimetres'] as const;
export type TapeStyle = (typeof tapeStyles)[number];

/** A way of the tape, or the name of a unit: `ft2/gal`. A plain number is of the unit `1`. */
export type Style = string;

/** What so many are called: for one and for more. */
export type Called = Readonly<Record<keyof Text, readonly [one: string, many: string]>>;

export const isTape = (style: Style): style is TapeStyle =>
  tapeStyles.some((known) => known === style);

const read = new Map<string, Unit>();

/** The unit in which a style counts; feet and inches count in inches. */
export function unitOfStyle(style: Style): Unit {
  const name = isTape(style) ? tapeUnits[style] : style;
  const known = read.get(name);
  if (known) return known;
  const unit = parseUnit(name);
  if (!unit.ok) throw new RangeError(unit.error.message.en);
  read.set(name, unit.value);
  return unit.value;
}

const tapeUnits: Readonly<Record<TapeStyle, string>> = {
  'feet-inches': 'in',
  inches: 'in',
  metres: 'm',
  millimetres: 'mm',
};

const fiveFeet = rational(60);

/** In which style a quantity is written where nothing else is said. Common practice on US sites. */
export function usualStyle(q: Quantity): Style {
  switch (q.dimension.name) {
    case 'length':
      return amountIn(q as Quantity<'length'>, 'in')
        .abs()
        .lt(fiveFeet)
        ? 'inches'
        : 'feet-inches';
    case 'area':
      return 'ft2';
    case 'volume':
      return isWhole(amountIn(q as Quantity<'volume'>, 'gal').mul(4n)) ? 'gal' : 'fl oz';
    case 'time':
      return q.value.gte(7200n) && isWhole(q.value.div(1800n)) ? 'h' : 'min';
    case 'temperature':
      return '°F';
    case 'temperature-difference':
      return 'F°';
    case 'angle':
      return '°';
    case 'money':
      return '$';
    case 'count':
      return '1';
    case 'ratio':
      return q.value.gt(0n) && q.value.lt(one) ? '%' : '1';
    case 'product':
      return usualProduct(q.dimension);
  }
}

const products = ['ft2/gal', '$/ft', '$/ft2', '$/gal', 'min/ft', 'ft/min', 'ft2/min', '$/h'];

function usualProduct({ powers }: Dimension): Style {
  const fits = products.find((name) => {
    const { dimension } = unitOfStyle(name);
    return Object.entries(powers).every(
      ([base, power]) => dimension.powers[base as keyof typeof powers] === power,
    );
  });
  return fits ?? '1';
}

const tape: Readonly<Record<TapeStyle, LengthStyle>> = {
  'feet-inches': { system: 'us' },
  inches: { system: 'us', style: 'inches' },
  metres: { system: 'metric' },
  millimetres: { system: 'metric', style: 'millimetres' },
};

const sixteenth = rational(1, 16);

/**
 * In the style, rounded to what a tape shows or to so many decimals. Where that is not the whole
 * value, `≈ ` stands before it if `honest`.
 */
export function writeQuantity(
  q: Quantity,
  style: Style,
  language: Language,
  { places = 2, honest = false } = {},
): string {
  const amount = amountIn(q, unitOfStyle(style));
  const step = isTape(style) ? tapeStep(style) : rational(1n, 10n ** BigInt(places));
  const about = honest && !isWhole(amount.div(step)) ? '≈ ' : '';
  if (isTape(style) && isA(q, 'length')) return about + formatLength(q, tape[style]);
  if (style === 'in') return `${about}${inches(q, language)}`;
  if (style === '1' || style === 'each') return about + formatDecimal(amount, places);
  return about + formatQuantity(q, { unit: unitOfStyle(style), places }, language);
}

const tapeStep = (style: TapeStyle) =>
  style === 'metres' ? rational(1, 1000) : style === 'millimetres' ? one : sixteenth;

/** An amount of inches that a tape shows is written with its fraction, any other in decimals. */
function inches(q: Quantity, language: Language): string {
  const amount = amountIn(q, unitOfStyle('in'));
  return isWhole(amount.div(sixteenth))
    ? `${formatMixed(amount)} ${unitOfStyle('in').label[language][1]}`
    : formatQuantity(q, { unit: unitOfStyle('in'), places: 3 }, language);
}

/** With the word for what is counted, where the family gives one. */
export function writeCalled(q: Quantity, called: Called, language: Language): string {
  const number = formatDecimal(q.value, 2);
  return `${number} ${called[language][number === '1' ? 0 : 1]}`;
}
