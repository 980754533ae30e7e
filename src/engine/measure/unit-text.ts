/**
 * Reads a unit: in, sq ft, ft², m^-1, ft2/gal, $ per ft. The longest name that fits is taken; what is
 * joined by / · per is read from the left. The names stand in the table of units.
 */
import { ok } from '#engine/result.ts';
import type { Result } from '#engine/result.ts';
import type { DimensionName } from './dimension.ts';
import { measureFault } from './fault.ts';
import type { MeasureFault, Span } from './fault.ts';
import { unitOne, unitPower, unitProduct } from './unit.ts';
import type { NamedUnit, Unit } from './unit.ts';
import { unitLabels, unitNameAt } from './unit-names.ts';
import type { Meanings } from './unit-names.ts';
import { excerpt, matchAt, skipSpaces } from './written.ts';
import type { Written } from './written.ts';

export interface UnitRead {
  readonly unit: Unit;
  readonly end: number;
}

interface Factor extends Span {
  readonly meanings: Meanings;
  readonly exponent: number;
  /** How it is joined to what stands before it, or to the number. */
  readonly sign: '/' | '·';
}

/** More than any quantity of the trade has; it bounds the work. */
const mostFactors = 8;

/**
 * A bare digit is a power only after a word and before no other digit, mark or letter: 12'2 1/2" and
 * 12ft2 1/2" keep their inches.
 */
const exponents = /\^(-?[1-9])(?!\d)|([²³])|(?<=\p{L})([23])(?!\s*[\d¼-¾⅐-⅞]|[.,/]\d|['"]|\p{L})/uy;
const signs = /\s*([/·*])\s*|\s+(?:per|por)\s+/y;

const factorAt = (plain: string, at: number, sign: '/' | '·' = '·'): Factor | undefined => {
  const name = unitNameAt(plain, at);
  if (name === undefined) return undefined;
  const [text, caret, superscript, digit] = matchAt(exponents, plain, name.end) ?? [''];
  const exponent =
    superscript === undefined ? Number(caret ?? digit ?? 1) : '²³'.indexOf(superscript) + 2;
  return { meanings: name.meanings, exponent, sign, at, end: name.end + text.length };
};

const meaningOf = ({ meanings }: Factor, wanted: DimensionName | undefined): NamedUnit =>
  meanings.find((unit) => unit.dimension.name === wanted) ?? meanings[0];

/** A scale with a zero of its own has no place in a product: there, °F is a difference. */
const combine = (factors: readonly Factor[]): Unit =>
  factors.reduce<Unit>((product, factor, place) => {
    const unit = meaningOf(factor, 'temperature-difference');
    const raised = factor.exponent === 1 ? unit : unitPower(unit, factor.exponent);
    return place === 0 && factor.sign === '·' ? raised : unitProduct(product, factor.sign, raised);
  }, unitOne);

/** What cannot be a unit runs up to the next space or digit. */
export const unknownUnit = (
  source: Written,
  at: number,
  wanted: DimensionName | undefined,
): Result<never, MeasureFault> => {
  const end = at + (matchAt(/[^\s\d]+/y, source.plain, at)?.[0].length ?? 0);
  const found = excerpt(source, at, end);
  const wrong =
    end === at
      ? { en: 'A unit is missing here.', es: 'Aquí falta una unidad.' }
      : {
          en: `“${found}” is not a unit known here.`,
          es: `“${found}” no es una unidad conocida.`,
        };
  const message = {
    en: `${wrong.en} Write one such as ${unitLabels(wanted, 'en')}.`,
    es: `${wrong.es} Escriba una como ${unitLabels(wanted, 'es')}.`,
  };
  return measureFault('UNKNOWN_UNIT', { at, end }, message);
};

/**
 * The unit that starts there, if any, read as one of the wanted dimension where it can be. `leading`
 * is the unit that stood before the number.
 */
export const readUnit = (
  source: Written,
  at: number,
  wanted?: DimensionName,
  leading?: Factor,
): Result<UnitRead | undefined, MeasureFault> => {
  const following =
    leading === undefined ? factorAt(source.plain, skipSpaces(source.plain, at)) : undefined;
  const factors = [leading ?? following].filter((factor) => factor !== undefined);
  let end = following?.end ?? at;
  for (;;) {
    const sign = matchAt(signs, source.plain, end);
    if (sign === undefined) break;
    const place = end + sign[0].length;
    const factor = factorAt(source.plain, place, '·*'.includes(sign[1] ?? '/') ? '·' : '/');
    if (factor === undefined) return unknownUnit(source, place, undefined);
    if (factors.length === mostFactors) {
      const message = {
        en: `A unit is a product of at most ${mostFactors} units. Leave some out.`,
        es: `Una unidad es el producto de ${mostFactors} unidades a lo más. Quite algunas.`,
      };
      return measureFault('TOO_LONG', factor, message);
    }
    factors.push(factor);
    end = factor.end;
  }
  const [alone, ...others] = factors;
  if (alone === undefined) return ok(undefined);
  const simple = others.length === 0 && alone.exponent === 1 && alone.sign === '·';
  return ok({ unit: simple ? meaningOf(alone, wanted) : combine(factors), end });
};

/** The sign of money stands before its number. */
export const readLeadingUnit = ({ plain }: Written, at: number): Factor | undefined =>
  plain.charAt(at) === '$' ? factorAt(plain, at) : undefined;
