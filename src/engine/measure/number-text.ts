/**
 * Reads a number as the trade writes it: 12, 6.5, 6,5, 1/2, 6 1/2, 6-1/2, 6½.
 *
 * The point is the decimal sign, in English and in the Spanish of Mexico and the United States
 * (Unicode CLDR: es-MX, es-US). A comma is read as one too, except where it may as well group
 * thousands: 1,250 is refused, since a guess could be wrong a thousandfold. With both signs, or with
 * one of them twice, there is only one reading: 1,250.5 and 1.250,5 and 1,250,000.
 */
import { ok } from '#engine/result.ts';
import type { Result } from '#engine/result.ts';
import { measureFault } from './fault.ts';
import type { MeasureFault, Span } from './fault.ts';
import { isWhole, rational } from './rational.ts';
import type { Rational } from './rational.ts';
import { excerpt, matchAt } from './written.ts';
import type { Written } from './written.ts';

export interface NumberRead extends Span {
  readonly value: Rational;
}

type NumberResult = Result<NumberRead, MeasureFault>;

const fraction = /(\d+)\/(\d+)/y;
const vulgar = /[¼-¾⅐-⅞]/y;
const digits = /\d+(?:[.,]\d+)*|[.,]\d+/y;
/** Between the whole number and the fraction of a mixed number. */
const joint = /(?:\s+|-)(?=\d+\/\d)|(?:\s*|-)(?=[¼-¾⅐-⅞])/y;
const moreNumber = /[.,/]\s*\d[\d.,/]*/y;

const decimal = (sign: string, token: string): Rational => {
  const [whole = '', tenths = ''] = token.split(sign);
  return rational(BigInt(whole + tenths), 10n ** BigInt(tenths.length));
};

/** Which sign of the token is the decimal sign and which groups thousands; undefined if neither. */
const signsOf = (token: string): { decimal?: string; group?: string } | undefined => {
  const signs = token.match(/[.,]/g) ?? [];
  const [first, last] = [signs[0], signs.at(-1)];
  if (first === undefined || last === undefined) return {};
  if (signs.length === 1) return { decimal: first };
  const grouped = `\\d{1,3}(?:[${first}]\\d{3})+`;
  if (first === last) return new RegExp(`^${grouped}$`).test(token) ? { group: first } : undefined;
  return new RegExp(`^${grouped}[${last}]\\d+$`).test(token)
    ? { group: first, decimal: last }
    : undefined;
};

const digitsAt = (written: Written, at: number): NumberResult => {
  const token = matchAt(digits, written.plain, at)?.[0];
  const end = at + (token?.length ?? 1);
  const found = excerpt(written, at, token === undefined ? written.text.length : end);
  if (token === undefined) {
    const message = {
      en: `“${found}” is not a number. Write digits first, such as 6 1/2 in or 3.82 m.`,
      es: `“${found}” no es un número. Escriba primero las cifras, como 6 1/2 pulg o 3.82 m.`,
    };
    return measureFault('NOT_A_NUMBER', { at, end: written.text.length }, message);
  }
  const signs = signsOf(token);
  if (signs === undefined) {
    const message = {
      en: `“${found}” is not a number. Write one decimal sign, as in 3.82.`,
      es: `“${found}” no es un número. Escriba un solo signo decimal, como en 3.82.`,
    };
    return measureFault('NOT_A_NUMBER', { at, end }, message);
  }
  const { decimal: sign = '.', group } = signs;
  if (/^[1-9]\d{0,2},\d{3}$/.test(token)) {
    const [one, other] = [token.replace(',', ''), token.replace(',', '.')];
    const message = {
      en: `“${found}” can mean ${one} or ${other}. Write the one that you mean.`,
      es: `“${found}” puede ser ${one} o ${other}. Escriba el que quiere decir.`,
    };
    return measureFault('AMBIGUOUS_NUMBER', { at, end }, message);
  }
  const ungrouped = group === undefined ? token : token.replaceAll(group, '');
  return ok({ value: decimal(sign, ungrouped), at, end });
};

/** A fraction with its line, or one of the characters such as ½; undefined if none is there. */
const fractionAt = ({ plain }: Written, at: number): NumberResult | undefined => {
  const character = matchAt(vulgar, plain, at)?.[0];
  const match =
    character === undefined
      ? matchAt(fraction, plain, at)
      : /(\d+)⁄(\d+)/.exec(character.normalize('NFKC'));
  if (match === null || match === undefined) return undefined;
  const end = at + (character ?? match[0]).length;
  const [above, below] = [BigInt(match[1] ?? 0), BigInt(match[2] ?? 0)];
  if (below === 0n) {
    const message = {
      en: `“${match[0]}” divides by zero. Write another number below the line.`,
      es: `“${match[0]}” divide entre cero. Escriba otro número debajo de la raya.`,
    };
    return measureFault('ZERO_DENOMINATOR', { at, end }, message);
  }
  return ok({ value: rational(above, below), at, end });
};

const mixedAt = (written: Written, whole: NumberRead): NumberResult => {
  const join = isWhole(whole.value) ? matchAt(joint, written.plain, whole.end) : undefined;
  if (join === undefined) return ok(whole);
  const part = fractionAt(written, whole.end + join[0].length);
  if (part === undefined || !part.ok) return part ?? ok(whole);
  const { value, at, end } = part.value;
  if (value.gte(1n)) {
    const found = excerpt(written, at, end);
    const message = {
      en: `“${found}” is a whole or more. Beside a whole number, write a fraction below one.`,
      es: `“${found}” vale un entero o más. Junto a un entero, escriba una fracción menor que uno.`,
    };
    return measureFault('IMPROPER_FRACTION', { at, end }, message);
  }
  return ok({ value: whole.value.add(value), at: whole.at, end });
};

/** The unsigned number that starts there. */
export const readNumber = (written: Written, at: number): NumberResult => {
  let read = fractionAt(written, at);
  if (read === undefined) {
    const whole = digitsAt(written, at);
    read = whole.ok ? mixedAt(written, whole.value) : whole;
  }
  if (!read.ok) return read;
  const more = matchAt(moreNumber, written.plain, read.value.end);
  if (more === undefined) return read;
  const end = read.value.end + more[0].length;
  const found = excerpt(written, at, end);
  const message = {
    en: `“${found}” is not a number. A fraction has one whole number above its line and one below.`,
    es: `“${found}” no es un número. Una fracción lleva un entero arriba de la raya y otro abajo.`,
  };
  return measureFault('NOT_A_NUMBER', { at, end }, message);
};
