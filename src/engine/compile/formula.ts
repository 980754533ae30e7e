import { parseFormula } from '#engine/takeoff/parse-formula.ts';
import type { Formula, FormulaFault, Parsed, Span } from '#engine/takeoff/formula.ts';
import { resolveFormula, type Resolved } from '#engine/takeoff/resolve-formula.ts';
import { knownNames, scopeOf, type Names } from './draft-names.ts';
import { nearest } from './nearest.ts';
import type { Reader } from './reader.ts';
import { placeOf, type Place, type SourceFile } from './source-file.ts';
import { plain } from './words.ts';

/** A formula that reads as one; what its names stand for is asked when all of them are known. */
export type WrittenFormula = {
  readonly text: string;
  readonly parsed: Parsed;
  readonly placeOf: (span: Span) => Place;
};

/** `null` where what is written is no formula. */
export const formula: Reader<WrittenFormula | null> = {
  blank: null,
  read: (here) => {
    const text = plain.read(here);
    if (text === '' || !here.node) return null;
    const place = placing(here.file, placeOf(here.node), text);
    const parsed = parseFormula(text);
    if (parsed.ok) return { text, parsed: parsed.value, placeOf: place };
    report(here.file, place, parsed.error);
    return null;
  },
};

/** A quoted or folded text has marks of its own, and does not stand as it reads: then the whole is meant. */
function placing(file: SourceFile, whole: Place, text: string): (span: Span) => Place {
  const start = file.text.indexOf(text, whole.from);
  const stands = start >= 0 && start + text.length <= whole.to;
  return ({ at, end }) =>
    stands ? { from: start + at, to: start + Math.max(at + 1, end) } : whole;
}

const report = (
  file: SourceFile,
  place: (span: Span) => Place,
  { code, message, cure, ...span }: FormulaFault,
): void => file.fault(code, place(span), message, cure);

/** The formula with its names and dimensions, or nothing where it had a fault. */
export function resolved(names: Names, { text, parsed, placeOf }: WrittenFormula): Resolved | null {
  const found = resolveFormula(text, parsed, scopeOf(names), names.terms);
  if (found.ok) return found.value;
  for (const fault of found.error) {
    const isName = fault.code === 'UNKNOWN_NAME';
    const cure = isName ? nameCure(names, text.slice(fault.at, fault.end)) : undefined;
    report(names.file, placeOf, { ...fault, cure: cure ?? fault.cure });
  }
  return null;
}

/** A minus without spaces makes one name of two values. */
function nameCure(names: Names, given: string): string | undefined {
  const known = [...knownNames(names)];
  const [first = '', ...others] = given.split('-');
  for (let name = first; others.length > 0; name += `-${others.shift()}`) {
    if (!known.includes(name)) continue;
    return `To subtract, write spaces around the minus: "${name} - ${others.join('-')}".`;
  }
  const meant = nearest(given, known);
  return meant === undefined ? undefined : `Write "${meant}", if that was meant.`;
}

/** Where the whole formula stands. */
export const placeOfAll = ({ parsed, placeOf }: WrittenFormula): Place => placeOf(parsed);

/** One that is true or false. */
export function condition(names: Names, written: WrittenFormula): Formula | null {
  const found = resolved(names, written);
  if (!found) return null;
  if (found.formula.root.kind === 'truth') return found.formula;
  const message = 'This is a quantity, and a condition is wanted.';
  names.file.fault(
    'UNIT_MISMATCH',
    placeOfAll(written),
    message,
    'Compare it with something: a < b.',
  );
  return null;
}
