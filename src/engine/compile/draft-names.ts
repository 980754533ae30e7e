import type { Kind, Term } from '#engine/takeoff/formula.ts';
import { bitsOfName, type Origin } from '#engine/takeoff/formula.ts';
import { nameTerm, type Named, type Scope, type Terms } from '#engine/takeoff/resolve-formula.ts';
import type { NumberId } from '#engine/method/method.ts';
import type { SheetDraft } from './data-sheet.ts';
import { sampleOf } from './rule.ts';
import { keyAt, type Path, type SourceFile } from './source-file.ts';

/**
 * What is known so far of the names of one family, in the order in which it is written: a formula sees
 * what stands before it and the numbers of the data sheet.
 */
export type Names = {
  readonly file: SourceFile;
  readonly sheet: SheetDraft;
  /** A name whose own formula had a fault is `null`. */
  readonly own: Map<string, Named | null>;
  readonly terms: Terms;
  /** Every name that something reads. */
  readonly read: Set<string>;
};

export const namesOf = (file: SourceFile, sheet: SheetDraft): Names => ({
  file,
  sheet,
  own: new Map(),
  terms: new Map(),
  read: new Set(),
});

export const scopeOf =
  (names: Names): Scope =>
  (name) => {
    names.read.add(name);
    const own = names.own.get(name);
    return own === undefined ? sheetName(names, name) : own;
  };

/** Every name that a formula could read here. */
export const knownNames = ({ own, sheet }: Names): Iterable<string> => [
  ...own.keys(),
  ...sheet.numbers.keys(),
];

function sheetName({ sheet }: Names, name: string): Named | null | undefined {
  const number = sheet.numbers.get(name as NumberId);
  if (!number) return number;
  return { origin: 'sheet', kind: sampleOf(number.rule).quantity.dimension, bits: bitsOfName };
}

/** Makes a name known, and gives its term; `null` where what it stands for had a fault. */
export function declare(
  names: Names,
  path: Path,
  name: string,
  origin: Origin,
  known: { readonly kind: Kind; readonly bits: number } | null,
): Term | null {
  const isTaken = names.own.has(name) || names.sheet.numbers.has(name as NumberId);
  if (isTaken) {
    const message = `"${name}" is a given, a part or a number of the data sheet already.`;
    const cure = 'Give it another name.';
    names.file.fault('DUPLICATE_KEY', keyAt(names.file, path), message, cure);
    return null;
  }
  const named = known && { origin, ...known };
  names.own.set(name, named);
  return named && nameTerm(names.terms, name, named);
}

/** The term by which a text or a picture reads a name; nothing where there is no such name. */
export function termNamed(names: Names, name: string): Term | null | undefined {
  const found = scopeOf(names)(name);
  return found ? nameTerm(names.terms, name, found) : found;
}
