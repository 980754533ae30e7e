/**
 * Works formulas out, exactly, on a slate of numbers. Each term of a family has its place on the slate
 * and is worked out at most once, so that slips share what they have in common with the answer. What
 * the data sheet alone decides is written there beforehand. Time: one exact operation a term.
 *
 * Dimensions were settled when the formulas were compiled, so the slate holds bare numbers.
 */
import { enter } from './base.ts';
import * as exact from './exact.ts';
import type { Exact } from './exact.ts';
import type { Given, Part, RoundRule } from './family.ts';
import type { Operation, Term, Value } from './formula.ts';

/** What names stand for where a slate is worked. */
export type Definitions = {
  readonly givens: ReadonlyMap<string, Given>;
  readonly parts: ReadonlyMap<string, Part>;
  /** The names in a part's formula that are of the kind of its answer. */
  readonly likeAnswer: ReadonlyMap<string, readonly Term[]>;
  readonly sheetValue: (name: string) => Exact;
  /** A number of the sheet that depends on the weather. */
  readonly weathered: (given: Given, slate: Slate) => Exact;
};

/** Mutable: it fills while terms are worked out. */
export type Slate = {
  readonly definitions: Definitions;
  readonly values: (Value | undefined)[];
  /** Some rounding so far went the way it did by a hair. */
  hangs: boolean;
};

/** Throws a RangeError where the numbers make no sense: division by zero, a step of nothing. */
export function workOut(term: Term, slate: Slate): Value {
  const known = slate.values[term.place];
  if (known !== undefined) return known;
  const value = compute(term, slate);
  slate.values[term.place] = value;
  return value;
}

/** The value of a term that is a quantity. */
export const number = (term: Term, slate: Slate): Exact => workOut(term, slate) as Exact;

export const truth = (term: Term, slate: Slate): boolean => workOut(term, slate) as boolean;

export const isSame = (a: Value, b: Value): boolean =>
  typeof a === 'boolean' || typeof b === 'boolean' ? a === b : exact.equals(a, b);

function compute(term: Term, slate: Slate): Value {
  const { definitions } = slate;
  switch (term.op) {
    case 'value':
      return enter(term.value);
    case 'sheet':
      return definitions.sheetValue(term.name);
    case 'given':
      return givenValue(term.name, slate);
    case 'part': {
      const part = definitions.parts.get(term.name);
      if (!part) throw new RangeError(`There is no part ${term.name}.`);
      return answerOf(part, slate);
    }
    default:
      return operate(term.op, term.args, slate);
  }
}

function givenValue(name: string, slate: Slate): Value {
  const given = slate.definitions.givens.get(name);
  if (given?.from.kind === 'computed') return workOut(given.from.formula.root, slate);
  if (given?.from.kind === 'sheet') return slate.definitions.weathered(given, slate);
  throw new RangeError(`Nothing is known of ${name}.`);
}

/** The right answer of a part, rounded as it asks. */
export function answerOf({ formula, answer }: Part, slate: Slate): Value {
  const value = workOut(formula.root, slate);
  if (answer.kind === 'decision' || typeof value === 'boolean') return value;
  if (answer.round) watch(slate, value, enter(answer.round.to), answer.round.how);
  return rounded(value, answer.round);
}

export const rounded = (value: Exact, rule: RoundRule | undefined): Exact =>
  rule ? exact.roundTo(value, enter(rule.to), rule.how) : value;

function watch(slate: Slate, value: Exact, step: Exact, how: RoundRule['how']): void {
  if (!slate.hangs) slate.hangs = exact.hangsOn(value, step, how);
}

const ways = { ceil: 'up', floor: 'down', round: 'nearest' } as const;
const one = exact.whole(1);

function operate(op: Operation, args: readonly Term[], slate: Slate): Value {
  // Not taken apart as a list: this is the innermost of all.
  const first = args[0]!;
  const second = args[1]!;
  switch (op) {
    case 'add':
      return exact.add(number(first, slate), number(second, slate));
    case 'subtract':
      return exact.subtract(number(first, slate), number(second, slate));
    case 'multiply':
      return exact.multiply(number(first, slate), number(second, slate));
    case 'divide':
      return exact.divide(number(first, slate), number(second, slate));
    case 'power':
      return exact.power(number(first, slate), Number(number(second, slate).n));
    case 'negate':
      return exact.negate(number(first, slate));
    case 'ceil':
    case 'floor':
    case 'round': {
      const step = args.length > 1 ? number(second, slate) : one;
      const value = number(first, slate);
      const result = exact.roundTo(value, step, ways[op]);
      watch(slate, value, step, ways[op]);
      return result;
    }
    case 'min':
    case 'max': {
      const sign = op === 'min' ? -1 : 1;
      return args
        .map((arg) => number(arg, slate))
        .reduce((best, value) => (sign * exact.compare(value, best) > 0 ? value : best));
    }
    case 'if':
      return workOut(truth(first, slate) ? second : args[2]!, slate);
    case 'and':
      return truth(first, slate) && truth(second, slate);
    case 'or':
      return truth(first, slate) || truth(second, slate);
    case 'not':
      return !truth(first, slate);
    default:
      return compares(op, order(workOut(first, slate), workOut(second, slate)));
  }
}

const order = (a: Value, b: Value): number =>
  typeof a === 'boolean' || typeof b === 'boolean' ? Number(a) - Number(b) : exact.compare(a, b);

type Comparison = 'less' | 'at-most' | 'more' | 'at-least' | 'equal' | 'different';

function compares(op: Comparison, sign: number): boolean {
  switch (op) {
    case 'less':
      return sign < 0;
    case 'at-most':
      return sign <= 0;
    case 'more':
      return sign > 0;
    case 'at-least':
      return sign >= 0;
    case 'equal':
      return sign === 0;
    case 'different':
      return sign !== 0;
  }
}
