/**
 * Reads a quantity as people write it: 12'-6 1/2", 12 ft 6.5 in, 3 m 82 cm, 70 °F, 250 ft²/gal, 10 %,
 * $12.50, 12. It never throws and never guesses: a text has one exact meaning, or a fault that says
 * where it goes wrong and how to mend it.
 *
 *   quantity = [ "-" ] part { joint part }
 *   part     = number [ unit ] | "$" number { ( "/" | "·" ) unit }
 *   joint    = nothing | ", " | " and " | " y " | "-" after feet
 *
 * One sign stands in front and holds for all parts. A number without a unit is a ratio or a count.
 * The text is read from left to right in time that grows with its length, which is bounded.
 */
import { ok } from '#engine/result.ts';
import type { Result } from '#engine/result.ts';
import type { Language } from '#engine/text.ts';
import { dimension, dimensionPhrase } from './dimension.ts';
import type { DimensionName } from './dimension.ts';
import { measureFault } from './fault.ts';
import type { MeasureFault, Span } from './fault.ts';
import { readParts } from './part-text.ts';
import { isA, ofBaseUnits } from './quantity.ts';
import type { Quantity } from './quantity.ts';
import { zero } from './rational.ts';
import type { Rational } from './rational.ts';
import { unitLabels } from './unit-names.ts';
import { excerpt, matchAt, skipSpaces, written } from './written.ts';
import type { Written } from './written.ts';

/** The longest text that is read, in UTF-16 units. */
export const longestText = 400;

const minus = /\s*(-?)\s*/y;

const unreadable = ({ text, plain }: Written): Result<never, MeasureFault> | undefined => {
  if (text.length > longestText) {
    const message = {
      en: `A quantity is written in at most ${longestText} characters. Shorten it.`,
      es: `Una cantidad se escribe en ${longestText} caracteres a lo más. Acórtela.`,
    };
    return measureFault('TOO_LONG', { at: longestText, end: text.length }, message);
  }
  if (skipSpaces(plain, 0) === plain.length) {
    const message = {
      en: 'Nothing is written here. Write a number and a unit, such as 6 1/2 in.',
      es: 'No hay nada escrito. Escriba un número y una unidad, como 6 1/2 pulg.',
    };
    return measureFault('EMPTY', { at: 0, end: text.length }, message);
  }
  return undefined;
};

const leftOver = (source: Written, from: number): Result<never, MeasureFault> | undefined => {
  const span = { at: skipSpaces(source.plain, from), end: source.plain.trimEnd().length };
  if (span.at >= span.end) return undefined;
  if (matchAt(/-[-\s]*[\d.,¼-¾⅐-⅞]/y, source.plain, span.at)) {
    const message = {
      en: `A quantity has one sign, in front of it, as in -12'-6". Nothing is subtracted here.`,
      es: `Una cantidad lleva un solo signo, al principio, como -12'-6". Aquí no se resta.`,
    };
    return measureFault('SIGN_INSIDE', { at: span.at, end: span.at + 1 }, message);
  }
  const found = excerpt(source, span.at, span.end);
  const message = {
    en: `“${found}” after the quantity cannot be read. Take it out or mend it.`,
    es: `“${found}” después de la cantidad no se puede leer. Quítelo o corríjalo.`,
  };
  return measureFault('TRAILING_TEXT', span, message);
};

const readQuantity = (
  source: Written,
  wanted: DimensionName | undefined,
): Result<{ readonly quantity: Quantity; readonly span: Span }, MeasureFault> => {
  const wrong = unreadable(source);
  if (wrong !== undefined) return wrong;
  const [before = '', sign = ''] = matchAt(minus, source.plain, 0) ?? [];
  const parts = readParts({ source, wanted }, before.length);
  if (!parts.ok) return parts;
  const [{ unit }] = parts.value;
  const span = { at: skipSpaces(source.plain, 0), end: parts.value.at(-1)?.end ?? 0 };
  const rest = leftOver(source, span.end);
  if (rest !== undefined) return rest;
  const size = parts.value.reduce<Rational>((sum, p) => sum.add(p.amount.mul(p.unit.size)), zero);
  const value = (sign === '' ? size : size.neg()).add(unit.zero);
  return ok({ quantity: ofBaseUnits(value, unit.dimension), span });
};

/** `a length (in, ft, yd, ...)`, for a message. */
const wish = (wanted: DimensionName, language: Language): string => {
  const labels = unitLabels(wanted, language);
  if (wanted !== 'product') return `${dimensionPhrase(dimension(wanted), language)} (${labels})`;
  return {
    en: `a quantity in units such as ${labels}`,
    es: `una cantidad en unidades como ${labels}`,
  }[language];
};

/**
 * The quantity that the text means, of the wanted dimension if one is given. Units and numbers are
 * read in every language.
 */
export const parseQuantity = <D extends DimensionName = DimensionName>(
  text: string,
  wanted?: D,
): Result<Quantity<D>, MeasureFault> => {
  const source = written(text);
  const read = readQuantity(source, wanted);
  if (!read.ok) return read;
  const { quantity, span } = read.value;
  const found = excerpt(source, span.at, span.end);
  if (isA(quantity, 'temperature') && quantity.value.lt(0n)) {
    const message = {
      en: `“${found}” is colder than anything can be. Write -459.67 °F (-273.15 °C) or more.`,
      es: `“${found}” es más frío de lo que algo puede estar. Escriba -459.67 °F (-273.15 °C) o más.`,
    };
    return measureFault('BELOW_ABSOLUTE_ZERO', span, message);
  }
  if (wanted === undefined || isA(quantity, wanted)) return ok(quantity as Quantity<D>);
  const message = {
    en: `“${found}” is ${dimensionPhrase(quantity.dimension, 'en')}. Write ${wish(wanted, 'en')}.`,
    es: `“${found}” es ${dimensionPhrase(quantity.dimension, 'es')}. Escriba ${wish(wanted, 'es')}.`,
  };
  return measureFault('WRONG_DIMENSION', span, message);
};

export const parseLength = (text: string): Result<Quantity<'length'>, MeasureFault> =>
  parseQuantity(text, 'length');
