/**
 * Gives a parsed formula its names and dimensions, and bounds what it can cost: the digits of every
 * number it can compute, from those of what it starts from. One pass over the formula.
 */
import { ofBaseUnits } from '#engine/measure/quantity.ts';
import { dimensionOf } from '#engine/measure/dimension.ts';
import { isWhole, rational } from '#engine/measure/rational.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { kindOf, kindOfPower } from './formula-kinds.ts';
import { shorten } from './formula-tokens.ts';
import {
  mostBits,
  type Formula,
  type FormulaFault,
  type Kind,
  type Origin,
  type Parsed,
  type Span,
  type Term,
} from './formula.ts';

/** What a name stands for, and how many bits its number can have. */
export type Named = { readonly origin: Origin; readonly kind: Kind; readonly bits: number };

/** Undefined: there is no such name here. Null: there is, but it had a fault of its own. */
export type Scope = (name: string) => Named | null | undefined;

/** All terms of one family so far, by what they say: grows while formulas are resolved. */
export type Terms = Map<string, Term>;

export type Resolved = { readonly formula: Formula; readonly bits: number };

/** No faults, yet no term: a name in it had its own. */
type Outcome = Result<{ readonly term: Term; readonly bits: number }, readonly FormulaFault[]>;

export function resolveFormula(
  text: string,
  parsed: Parsed,
  scope: Scope,
  terms: Terms,
): Result<Resolved, readonly FormulaFault[]> {
  const found = resolve(parsed, scope, terms);
  return found.ok
    ? ok({ formula: { text, root: found.value.term }, bits: found.value.bits })
    : found;
}

function resolve(parsed: Parsed, scope: Scope, terms: Terms): Outcome {
  if (parsed.op === 'value') {
    const { value, written } = parsed;
    const term = termOf(terms, `"${written}`, {
      op: 'value',
      kind: value.dimension,
      value,
      written,
    });
    return ok({ term, bits: bitsIn(value.value.n) + bitsIn(value.value.d) });
  }
  if (parsed.op === 'name') return named(parsed, parsed.name, scope, terms);
  if (parsed.op === 'power') return power(parsed, parsed.args, scope, terms);

  const args = parsed.args.map((arg) => resolve(arg, scope, terms));
  const faults = args.flatMap((arg) => (arg.ok ? [] : arg.error));
  const sound = args.flatMap((arg) => (arg.ok ? [arg.value] : []));
  if (sound.length < args.length) return fault(faults);
  const kind = kindOf(
    parsed.op,
    sound.map(({ term }) => term.kind),
  );
  if (!kind.ok) return fault([{ ...kind.error, ...spanOf(parsed) }]);
  const bits = sound.reduce((sum, { bits }) => sum + bits, 1);
  const key = `${parsed.op}(${sound.map(({ term }) => term.place).join()})`;
  const children = sound.map(({ term }) => term);
  return bounded(
    parsed,
    bits,
    termOf(terms, key, { op: parsed.op, kind: kind.value, args: children }),
  );
}

function named(span: Span, name: string, scope: Scope, terms: Terms): Outcome {
  const found = scope(name);
  if (found === null) return fault([]);
  if (!found && name === 'pi') return ok({ term: termOf(terms, 'pi', pi), bits: 40 });
  if (found) return ok({ term: nameTerm(terms, name, found), bits: found.bits });
  const message = `There is no “${name}” here.`;
  const cure = 'Name a given, an earlier part or a number of the data sheet.';
  return fault([{ code: 'UNKNOWN_NAME', message, cure, ...spanOf(span) }]);
}

/**
 * The ratio of the circle as a convergent of its continued fraction (OEIS A002485, A002486): off by less
 * than 3e-11, which no measure of the trade can tell, and of numbers so small that products stay quick.
 */
const pi = {
  op: 'value',
  kind: dimensionOf({}),
  value: ofBaseUnits(rational(312_689, 99_532), dimensionOf({})),
  written: 'π',
} as const;

/** The term of a name, which all formulas of the family share. */
export const nameTerm = (terms: Terms, name: string, { origin, kind }: Named): Term =>
  termOf(terms, `${origin} ${name}`, { op: origin, kind, name });

/** Only to a whole number from 2 to 6: a larger power has no use in the trade. */
function power(span: Span, args: readonly Parsed[], scope: Scope, terms: Terms): Outcome {
  const [base, exponent] = args as readonly [Parsed, Parsed];
  const found = resolve(base, scope, terms);
  if (!found.ok) return found;
  const raised = exponent.op === 'value' ? exponent.value.value : undefined;
  if (!raised || !isWhole(raised) || raised.lt(2n) || raised.gt(6n)) {
    const cure = 'Write it as 2, 3, 4, 5 or 6.';
    const message = 'A power is a whole number from 2 to 6, written out.';
    return fault([{ code: 'WRONG_ARGUMENTS', message, cure, ...spanOf(exponent) }]);
  }
  const kind = kindOfPower(found.value.term.kind, Number(raised.n));
  if (!kind.ok) return fault([{ ...kind.error, ...spanOf(span) }]);
  const to = resolve(exponent, scope, terms);
  if (!to.ok) return to;
  const children = [found.value.term, to.value.term];
  const key = `power(${children.map(({ place }) => place).join()})`;
  const bits = found.value.bits * Number(raised.n);
  return bounded(span, bits, termOf(terms, key, { op: 'power', kind: kind.value, args: children }));
}

function bounded(span: Span, bits: number, term: Term): Outcome {
  if (bits <= mostBits) return ok({ term, bits });
  const message = 'This can become a number too large to work with.';
  return fault([{ code: 'FORMULA_TOO_COSTLY', message, cure: shorten, ...spanOf(span) }]);
}

type Fresh = Term extends infer T ? (T extends Term ? Omit<T, 'place'> : never) : never;

function termOf(terms: Terms, key: string, fresh: Fresh): Term {
  const known = terms.get(key);
  if (known) return known;
  const term = { ...fresh, place: terms.size } as Term;
  terms.set(key, term);
  return term;
}

const spanOf = ({ at, end }: Span): Span => ({ at, end });

const bitsIn = (whole: bigint): number => 4 * whole.toString(16).length;
