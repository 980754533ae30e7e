/**
 * The language in which a problem says how it is computed: + - * / ^ < <= > >= == !=, and, or, not,
 * and the functions below, over numbers, quantities in quotes ("2 in") and names. It has no way to
 * name, call or change anything else, and every formula ends: there are no loops.
 */
import type { Dimension } from '#engine/measure/dimension.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import type { Exact } from './exact.ts';

/** What stands between or before values, by what it means. */
export const signs = [
  'add',
  'subtract',
  'multiply',
  'divide',
  'power',
  'negate',
  'less',
  'at-most',
  'more',
  'at-least',
  'equal',
  'different',
  'and',
  'or',
  'not',
] as const;

/** Called by name: ceil(x), ceil(x, increment), min(a, b, ...), if(condition, then, otherwise). */
export const calls = ['ceil', 'floor', 'round', 'min', 'max', 'if'] as const;

export type Call = (typeof calls)[number];
export type Operation = (typeof signs)[number] | Call;

/** What a formula gives: a quantity of some dimension, or true or false. */
export type Kind = Dimension | 'truth';

/** A bare number, lengths in inches, or true or false. */
export type Value = Exact | boolean;

/** From `at` up to but not including `end`, in UTF-16 units of the formula's text. */
export type Span = { readonly at: number; readonly end: number };

/** A formula as it was written, before anything is known of its names. */
export type Parsed = Span &
  (
    | { readonly op: 'value'; readonly value: Quantity; readonly written: string }
    | { readonly op: 'name'; readonly name: string }
    | { readonly op: Operation; readonly args: readonly Parsed[] }
  );

/** Where a name gets its value: from the problem, from an earlier part of it, or from the data sheet. */
export type Origin = 'given' | 'part' | 'sheet';

/**
 * A formula whose names and dimensions are known. Equal terms of one family are one term, with one
 * place, so that each is computed once.
 */
export type Term = { readonly place: number; readonly kind: Kind } & (
  | { readonly op: 'value'; readonly value: Quantity; readonly written: string }
  | { readonly op: Origin; readonly name: string }
  | { readonly op: Operation; readonly args: readonly Term[] }
);

export type Formula = { readonly text: string; readonly root: Term };

/** Everything that can be wrong with a formula. */
export type FormulaFault = Span & {
  readonly code:
    | 'FORMULA_SYNTAX'
    | 'FORMULA_TOO_COSTLY'
    | 'UNKNOWN_FUNCTION'
    | 'WRONG_ARGUMENTS'
    | 'UNKNOWN_NAME'
    | 'UNIT_MISMATCH'
    | 'BAD_QUANTITY';
  readonly message: string;
  readonly cure: string;
};

/** A formula is no longer than this, in UTF-16 units, nests no deeper and has no more parts. */
export const longestFormula = 400;
export const deepestNesting = 24;
export const mostTerms = 120;
/** No number that a formula computes has more bits, whatever its names stand for. */
export const mostBits = 60_000;
/** Room enough for any number that a person enters or a data sheet states. */
export const bitsOfName = 256;
