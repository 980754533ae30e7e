/** Brings a formula with its numbers put in down to its result, one line after the other. */
import type { Text } from '#engine/text.ts';
import type { Part } from './family.ts';
import { inEach } from './fill-text.ts';
import type { Operation, Term } from './formula.ts';
import type { Instance } from './instance.ts';
import { resultLeaf, show, valueLeaf } from './shown-values.ts';
import { isAbout, isLeaf, lineOf, type Shown } from './shown.ts';
import { truth } from './slate.ts';
import type { WorkedLine } from './worked-line.ts';

/** With the branch that is taken in the place of every `if`. */
export function choose(term: Term, instance: Instance): Term {
  if (!('args' in term)) return term;
  if (term.op === 'if') {
    const [condition, then, otherwise] = term.args as readonly [Term, Term, Term];
    return choose(truth(condition, instance.slate) ? then : otherwise, instance);
  }
  return { ...term, args: term.args.map((arg) => choose(arg, instance)) };
}

/** The line with the sign before it that says whether it is exact. */
export const signed = (shown: Shown): Text =>
  inEach((language) => `${isAbout(shown) ? '≈' : '='} ${lineOf(shown)[language]}`);

export function stepsFrom(start: Shown, instance: Instance, part: Part): readonly WorkedLine[] {
  const lines: WorkedLine[] = [];
  for (let shown = start; ;) {
    const next = reduce(shown, instance, part);
    if (next === shown) return lines;
    lines.push({ kind: 'step', text: signed(next) });
    shown = next;
  }
}

/** Every operation whose parts are all values becomes a value; a comparison stays to be seen. */
function reduce(shown: Shown, instance: Instance, part: Part): Shown {
  if (isLeaf(shown)) return shown;
  if (isFlat(shown)) {
    return shown.term.kind === 'truth' ? shown : resultLeaf(shown.term, instance, part);
  }
  const args = shown.args.map((arg) => reduce(arg, instance, part));
  return args.every((arg, index) => arg === shown.args[index]) ? shown : { ...shown, args };
}

const sums: ReadonlySet<Operation> = new Set(['add', 'subtract']);

/** A sum or a product of any length is one step. */
function isFlat(shown: Shown): boolean {
  if (isLeaf(shown)) return true;
  const { op, args } = shown;
  const goesOn = (arg: Shown): boolean =>
    isLeaf(arg) || (sums.has(op) ? sums.has(arg.op) : op === 'multiply' && arg.op === 'multiply');
  return args.every((arg) => goesOn(arg) && (isLeaf(arg) || isFlat(arg)));
}

const opposite: Partial<Record<Operation, Operation>> = {
  less: 'at-least',
  'at-most': 'more',
  more: 'at-most',
  'at-least': 'less',
  equal: 'different',
  different: 'equal',
};

/** Why each branch was taken. */
export function sinceLines(term: Term, instance: Instance, part: Part): readonly WorkedLine[] {
  if (!('args' in term)) return [];
  if (term.op !== 'if') return term.args.flatMap((arg) => sinceLines(arg, instance, part));
  const [condition, then, otherwise] = term.args as readonly [Term, Term, Term];
  const holds = truth(condition, instance.slate);
  const named = instance.takeoff.family.givens.find(
    ({ id }) => 'name' in condition && id === condition.name,
  );
  const shown = show(choose(condition, instance), (leaf) => valueLeaf(leaf, instance, part));
  const { en, es } = lineOf(holds || isLeaf(shown) ? shown : negated(shown));
  const text = named
    ? { en: `${named.name.en}: ${en}`, es: `${named.name.es}: ${es}` }
    : { en: `Since ${en}:`, es: `Porque ${es}:` };
  return [{ kind: 'since', text }, ...sinceLines(holds ? then : otherwise, instance, part)];
}

function negated(shown: Exclude<Shown, { readonly text: Text }>): Shown {
  const op = opposite[shown.op];
  return op ? { ...shown, op } : { term: shown.term, op: 'not', args: [shown] };
}
