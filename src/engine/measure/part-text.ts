/**
 * Reads the parts of a quantity and how they join: the 12' and the 6 1/2" of 12'-6 1/2". Parts are of
 * one series of units, the larger unit first, and only the last carries a fraction.
 */
import { ok } from '#engine/result.ts';
import type { Result } from '#engine/result.ts';
import type { DimensionName } from './dimension.ts';
import { measureFault } from './fault.ts';
import type { MeasureFault, Span } from './fault.ts';
import { readNumber } from './number-text.ts';
import { isWhole } from './rational.ts';
import type { Rational } from './rational.ts';
import type { Unit } from './unit.ts';
import { readLeadingUnit, readUnit, unknownUnit } from './unit-text.ts';
import { unitLabels } from './unit-names.ts';
import { units } from './units.ts';
import { excerpt, matchAt, skipSpaces } from './written.ts';
import type { Written } from './written.ts';

export interface Part extends Span {
  readonly amount: Rational;
  readonly unit: Unit;
}

type Parts = readonly [Part, ...Part[]];

/** A text, and the dimension that is asked for, if any. */
export interface Reading {
  readonly source: Written;
  readonly wanted: DimensionName | undefined;
}

const ahead = '(?=[.,]?\\d|[¼-¾⅐-⅞])';
const joint = new RegExp(`\\s*,\\s+${ahead}|\\s+(?:and|y)\\s+${ahead}|\\s*${ahead}`, 'y');
/** 12'-6" and 12' - 6" and 12 ft-6 in; but 12 ft - 6 in would be a subtraction. */
const feetJoint = new RegExp(`(?<=')\\s*-\\s*${ahead}|-${ahead}`, 'y');

/** What a number that stands alone counts in. */
const bareUnit = (wanted: DimensionName | undefined): Unit | undefined => {
  if (wanted === 'count') return units.each;
  return wanted === undefined || wanted === 'ratio' ? units['1'] : undefined;
};

const readPart = (
  { source, wanted }: Reading,
  at: number,
  first: boolean,
): Result<Part, MeasureFault> => {
  const { plain } = source;
  const leading = readLeadingUnit(source, at);
  const number = readNumber(source, skipSpaces(plain, leading?.end ?? at));
  if (!number.ok) return number;
  const { value: amount, end } = number.value;
  const unit = readUnit(source, end, wanted, leading);
  if (!unit.ok) return unit;
  if (unit.value !== undefined) {
    return ok({ amount, unit: unit.value.unit, at, end: unit.value.end });
  }
  const next = skipSpaces(plain, end);
  if (/[^\d.,-]/.test(plain.charAt(next))) return unknownUnit(source, next, wanted);
  const bare = first && next === plain.length ? bareUnit(wanted) : undefined;
  if (bare !== undefined) return ok({ amount, unit: bare, at, end });
  const found = excerpt(source, at, end);
  const message = {
    en: `“${found}” has no unit. Write one after it, such as ${unitLabels(wanted, 'en')}.`,
    es: `“${found}” no tiene unidad. Escriba una después, como ${unitLabels(wanted, 'es')}.`,
  };
  return measureFault('MISSING_UNIT', { at, end }, message);
};

const misfit = (
  source: Written,
  large: Part,
  small: Part,
): Result<never, MeasureFault> | undefined => {
  const both = excerpt(source, large.at, small.end);
  if (large.unit.series === undefined || large.unit.series !== small.unit.series) {
    const message = {
      en: `The units of “${both}” do not follow each other. Write one unit, or feet and inches, or metres and centimetres.`,
      es: `Las unidades de “${both}” no van juntas. Escriba una sola unidad, o pies y pulgadas, o metros y centímetros.`,
    };
    return measureFault('PARTS_DO_NOT_JOIN', small, message);
  }
  if (small.unit.size.gte(large.unit.size)) {
    const message = {
      en: `The parts of “${both}” are out of order. Write the larger unit first and each once, as in 12' 6".`,
      es: `Las partes de “${both}” están en desorden. Escriba primero la unidad mayor y cada una una sola vez, como 12' 6".`,
    };
    return measureFault('OUT_OF_ORDER_PARTS', small, message);
  }
  if (!isWhole(large.amount)) {
    const message = {
      en: `“${both}” has a fraction before its last part. Only the last part takes one, as in 12' 6 1/2".`,
      es: `“${both}” tiene una fracción antes de la última parte. Solo la última la lleva, como 12' 6 1/2".`,
    };
    return measureFault('FRACTION_NOT_LAST', large, message);
  }
  return undefined;
};

/** The parts that start there, up to where nothing more joins on. */
export const readParts = (reading: Reading, at: number): Result<Parts, MeasureFault> => {
  const { source } = reading;
  const first = readPart(reading, at, true);
  if (!first.ok) return first;
  const parts: [Part, ...Part[]] = [first.value];
  for (let last = first.value; ;) {
    const join =
      matchAt(joint, source.plain, last.end) ??
      (last.unit === units.ft ? matchAt(feetJoint, source.plain, last.end) : undefined);
    if (join === undefined) return ok(parts);
    const next = readPart(reading, last.end + join[0].length, false);
    if (!next.ok) return next;
    const wrong = misfit(source, last, next.value);
    if (wrong !== undefined) return wrong;
    last = next.value;
    parts.push(last);
  }
};
