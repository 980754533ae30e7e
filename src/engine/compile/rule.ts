import { dimension } from '#engine/measure/dimension.ts';
import { compare } from '#engine/measure/arithmetic.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import type { FixedRule, Rule } from '#engine/method/data-sheet.ts';
import { curveFrom, factor, rows, weatherCondition } from './curve.ts';
import { anyQuantity, areAlike, isOfDimension, difference, isDistance } from './quantity.ts';
import { type Read } from './group.ts';
import { pair } from './list.ts';
import { missingKey, optional } from './reader.ts';
import { keyAt, placeAt, type Path, type SourceFile } from './source-file.ts';

/** Here and below, `undefined` was not written, and `null` was but could not be read. */
export const ruleFields = {
  exactly: optional(anyQuantity, undefined),
  'at-least': optional(anyQuantity, undefined),
  'at-most': optional(anyQuantity, undefined),
  between: optional(pair(anyQuantity, anyQuantity, 'low, high'), undefined),
  about: optional(anyQuantity, undefined),
  within: optional(difference, undefined),
  by: optional(weatherCondition, undefined),
  rows: optional(rows, undefined),
  times: optional(factor, undefined),
};

type WrittenRule = Read<typeof ruleFields>;
type RuleKey = keyof WrittenRule;

const kindOfKey = {
  exactly: 'exactly',
  'at-least': 'at-least',
  'at-most': 'at-most',
  between: 'between',
  about: 'about',
  within: 'about',
  by: 'by',
  rows: 'by',
  times: 'by',
} as const satisfies Record<RuleKey, Rule['kind']>;

const ruleKeys = Object.keys(kindOfKey) as readonly RuleKey[];

export function ruleFrom(
  file: SourceFile,
  path: Path,
  written: WrittenRule,
): Rule | null | undefined {
  const stated = ruleKeys
    .filter((key) => written[key] !== undefined)
    .toSorted((a, b) => keyAt(file, [...path, a]).from - keyAt(file, [...path, b]).from);
  const [first] = stated;
  if (first === undefined) return undefined;
  const other = stated.find((key) => kindOfKey[key] !== kindOfKey[first]);
  if (other === undefined) return makeRule(file, path, kindOfKey[first], written);
  file.fault(
    'TWO_RULES',
    keyAt(file, [...path, other]),
    `"${other}" is a second rule beside "${first}".`,
    'Keep the one rule that a value must meet.',
  );
  return null;
}

function makeRule(
  file: SourceFile,
  path: Path,
  kind: Rule['kind'],
  written: WrittenRule,
): Rule | null {
  switch (kind) {
    case 'exactly':
    case 'at-least':
    case 'at-most': {
      const value = written[kind];
      return value ? { kind, value } : null;
    }
    case 'between':
      return between(file, [...path, 'between'], written.between ?? [null, null]);
    case 'about':
      return about(file, path, written);
    case 'by':
      return byCondition(file, path, written);
  }
}

function between(
  file: SourceFile,
  path: Path,
  [low, high]: readonly [Quantity | null, Quantity | null],
): FixedRule | null {
  if (!low || !high || !areAlike(file, [...path, 1], high, low)) return null;
  if (compare(low, high) > 0) {
    const message = 'The low end lies above the high end.';
    file.fault('EMPTY_RANGE', placeAt(file, [...path, 0]), message, 'Write [low, high].');
  }
  return { kind: 'between', low, high };
}

function about(file: SourceFile, path: Path, { about, within }: WrittenRule): FixedRule | null {
  if (!has(file, path, 'about', about) || !has(file, path, 'within', within)) return null;
  if (!about || !within || !isDistance(file, [...path, 'within'], within, about)) return null;
  if (within.value.lt(0n)) {
    const message = 'No value is less than nothing away.';
    file.fault('EMPTY_RANGE', placeAt(file, [...path, 'within']), message, 'Leave out the minus.');
  }
  return { kind: 'about', value: about, within };
}

function byCondition(file: SourceFile, path: Path, written: WrittenRule): Rule | null {
  const { by, rows, times } = written;
  if (!has(file, path, 'by', by) || !has(file, path, 'rows', rows) || !by || !rows) return null;
  const curve = curveFrom(file, [...path, 'rows'], by, rows);
  const timesPath = [...path, 'times', 'rows'];
  const factors = times?.by ? curveFrom(file, timesPath, times.by, times.rows) : undefined;
  if (!curve || (times && !factors)) return null;
  const [top] = curve.rows;
  const alike = curve.rows.every(({ value }, row) =>
    areAlike(file, [...path, 'rows', row, 1], value, top!.value),
  );
  const plain = factors?.rows.every(({ value }, row) =>
    isOfDimension(file, [...timesPath, row, 1], value, dimension('ratio')),
  );
  return alike && plain !== false ? { kind: 'by', curve, times: factors } : null;
}

/** Whether a key was written that its rule cannot do without. */
function has(file: SourceFile, path: Path, key: RuleKey, value: unknown): boolean {
  if (value !== undefined) return true;
  missingKey(file, keyAt(file, path), key);
  return false;
}

/** A quantity that tells what kind the whole number is of, and where in the number it stands. */
export function sampleOf(rule: Rule): { readonly path: Path; readonly quantity: Quantity } {
  switch (rule.kind) {
    case 'between':
      return { path: ['between', 0], quantity: rule.low };
    case 'by':
      return { path: ['rows', 0, 1], quantity: rule.curve.rows[0]!.value };
    default:
      return { path: [rule.kind], quantity: rule.value };
  }
}
