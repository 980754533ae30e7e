import { compare } from '#engine/measure/arithmetic.ts';
import {
  commonDimension,
  dimension,
  dimensionPhrase,
  type Dimension,
} from '#engine/measure/dimension.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import type { SheetNumber } from '#engine/method/data-sheet.ts';
import type { WeatherCondition } from '#engine/method/site.ts';
import type { Given, GivenId, Origin } from '#engine/takeoff/family.ts';
import { kindPhrase } from '#engine/takeoff/formula-kinds.ts';
import { bitsOfName, type Formula, type Kind } from '#engine/takeoff/formula.ts';
import { declare, type Names } from './draft-names.ts';
import { styleFor } from './draft-style.ts';
import type { WrittenGiven } from './family.ts';
import { placeOfAll, resolved } from './formula.ts';
import { nearestCure } from './names.ts';
import { areAlike, isDistance } from './quantity.ts';
import { missingKey } from './reader.ts';
import { conditionDimensions } from './site.ts';
import { keyAt, placeAt, type Path } from './source-file.ts';

type Sized = { readonly from: Origin; readonly kind: Kind; readonly bits: number };

const kindOfKey = {
  from: 'range',
  to: 'range',
  by: 'range',
  'one-of': 'one-of',
  yes: 'either',
  no: 'either',
  sheet: 'sheet',
  take: 'sheet',
  at: 'sheet',
  compute: 'computed',
} as const satisfies Partial<Record<keyof WrittenGiven, Origin['kind']>>;

type OriginKey = keyof typeof kindOfKey;

const originKeys = Object.keys(kindOfKey) as readonly OriginKey[];

/** A given, which later formulas may name even where it has a fault. */
export function draftGiven(names: Names, id: string, written: WrittenGiven): Given | null {
  const path = ['givens', id];
  const sized = origin(names, path, written);
  const term = declare(names, path, id, 'given', sized);
  const style =
    written.write === undefined
      ? undefined
      : styleFor(names.file, [...path, 'write'], written.write, sized?.kind);
  if (!sized || !term || style === null) return null;
  return { id: id as GivenId, name: written.name, term, style, from: sized.from };
}

function origin(names: Names, path: Path, written: WrittenGiven): Sized | null {
  const { file } = names;
  const stated = originKeys
    .filter((key) => written[key] !== undefined)
    .toSorted((a, b) => keyAt(file, [...path, a]).from - keyAt(file, [...path, b]).from);
  const [first] = stated;
  if (first === undefined) {
    const cure = 'Add one of: from with to and by, one-of, yes with no, sheet, compute.';
    file.fault('NO_ORIGIN', keyAt(file, path), 'Nothing says what its value is.', cure);
    return null;
  }
  const other = stated.find((key) => kindOfKey[key] !== kindOfKey[first]);
  if (other !== undefined) {
    const message = `"${other}" gives it a value beside "${first}".`;
    file.fault('TWO_ORIGINS', keyAt(file, [...path, other]), message, 'Keep one of them.');
    return null;
  }
  switch (kindOfKey[first]) {
    case 'range':
      return range(names, path, written);
    case 'one-of':
      return oneOf(names, [...path, 'one-of'], written['one-of'] ?? []);
    case 'either':
      return either(names, path, written);
    case 'sheet':
      return fromSheet(names, path, written);
    case 'computed':
      return computed(names, written);
  }
}

/** More values than this are no more variety. */
const mostValues = 1_000_000n;

function range({ file }: Names, path: Path, written: WrittenGiven): Sized | null {
  const keys = ['from', 'to', 'by'] as const;
  const missing = keys.filter((key) => written[key] === undefined);
  missing.forEach((key) => missingKey(file, keyAt(file, path), key));
  const { from, to, by } = written;
  if (!from || !to || !by) return null;
  const isRange =
    areAlike(file, [...path, 'to'], to, from) && isDistance(file, [...path, 'by'], by, from);
  if (!isRange) return null;
  if (compare(from, to) >= 0) {
    const message = 'The range ends where it begins, or before.';
    file.fault('EMPTY_RANGE', placeAt(file, [...path, 'from']), message, 'Write a larger end.');
    return null;
  }
  if (by.value.lte(0n) || to.value.sub(from.value).div(by.value).gt(mostValues)) {
    const message = 'The range does not get to its end in a million steps.';
    file.fault('EMPTY_RANGE', placeAt(file, [...path, 'by']), message, 'Write a larger step.');
    return null;
  }
  return sized({ kind: 'range', from, to, by }, from);
}

const sized = (from: Origin, { dimension }: Quantity): Sized => ({
  from,
  kind: dimension,
  bits: bitsOfName,
});

function oneOf({ file }: Names, path: Path, written: readonly (Quantity | null)[]): Sized | null {
  const values = written.flatMap((value) => (value ? [value] : []));
  const [first] = values;
  if (!first || values.length < written.length) return null;
  const alike = values.every((value, place) => areAlike(file, [...path, place], value, first));
  return alike ? sized({ kind: 'one-of', values }, first) : null;
}

function either({ file }: Names, path: Path, { yes, no }: WrittenGiven): Sized | null {
  if (yes === undefined) missingKey(file, keyAt(file, path), 'yes');
  if (no === undefined) missingKey(file, keyAt(file, path), 'no');
  return yes && no ? { from: { kind: 'either', yes, no }, kind: 'truth', bits: 1 } : null;
}

function computed(names: Names, { compute }: WrittenGiven): Sized | null {
  const found = compute ? resolved(names, compute) : null;
  if (!found) return null;
  const { formula, bits } = found;
  return { from: { kind: 'computed', formula }, kind: formula.root.kind, bits };
}

function fromSheet(names: Names, path: Path, written: WrittenGiven): Sized | null {
  const { file, sheet } = names;
  if (written.sheet === undefined) {
    missingKey(file, keyAt(file, path), 'sheet');
    return null;
  }
  const at = weather(names, path, written);
  const number = sheet.numbers.get(written.sheet);
  if (number === undefined && written.sheet !== '') {
    const message = `The data sheet "${sheet.id}" has no number "${written.sheet}".`;
    const cure = nearestCure(written.sheet, sheet.numbers.keys());
    file.fault('UNKNOWN_NUMBER', placeAt(file, [...path, 'sheet']), message, cure);
  }
  if (!number || !at) return null;
  checkWeather(names, path, number, at);
  const from = { kind: 'sheet', number: number.id, take: written.take ?? 'aim', at } as const;
  return { from, kind: dimensionOfNumber(number), bits: bitsOfName };
}

function dimensionOfNumber({ rule }: SheetNumber): Dimension {
  switch (rule.kind) {
    case 'between':
      return rule.low.dimension;
    case 'by':
      return rule.curve.rows[0]!.value.dimension;
    default:
      return rule.value.dimension;
  }
}

type At = ReadonlyMap<WeatherCondition, Formula>;

function weather(names: Names, path: Path, { at }: WrittenGiven): At | null {
  const found = [...(at ?? [])].map(([condition, written]) => {
    const formula = written ? resolved(names, written) : null;
    if (!written || !formula) return null;
    const { root } = formula.formula;
    const wanted = dimension(conditionDimensions[condition]);
    if (root.kind !== 'truth' && commonDimension(root.kind, wanted)) {
      return [condition, formula.formula] as const;
    }
    const message = `This is ${kindPhrase(root.kind)}, and ${condition} is ${dimensionPhrase(wanted)}.`;
    const cure = 'Name a given that states this condition.';
    names.file.fault('UNIT_MISMATCH', placeOfAll(written), message, cure);
    return null;
  });
  const sound = found.filter((pair) => pair !== null);
  return sound.length < found.length ? null : new Map(sound);
}

function checkWeather({ file }: Names, path: Path, { id, rule }: SheetNumber, at: At): void {
  if (rule.kind !== 'by') return;
  for (const condition of new Set([rule.curve.by, ...(rule.times ? [rule.times.by] : [])])) {
    if (at.has(condition)) continue;
    const message = `"${id}" depends on ${condition}, which is left open here.`;
    const cure = `Add to it: at: { ${condition}: the given that states it }.`;
    file.fault('UNSTATED_CONDITION', placeAt(file, [...path, 'sheet']), message, cure);
  }
}
