import type { Family } from './family.ts';
import { namesAskedIn } from './fill-text.ts';
import type { Formula, Term } from './formula.ts';

/** Every formula of a family. */
export function* formulasOf({ givens, needs, where, parts }: Family): Generator<Formula> {
  for (const { from } of givens) {
    if (from.kind === 'computed') yield from.formula;
    if (from.kind === 'sheet') yield* from.at.values();
  }
  for (const { that } of needs) yield that;
  yield* where;
  for (const { formula, slips } of parts) {
    yield formula;
    for (const slip of slips) yield slip.formula;
  }
}

/** Every term of a family once, each after those it is made of. */
export function termsOf(family: Family): Iterable<Term> {
  const seen = new Set<Term>();
  for (const { root } of formulasOf(family)) gather(root, seen);
  return seen;
}

/** The term and all that it is made of. */
export function gather(term: Term, into: Set<Term>): void {
  if (into.has(term)) return;
  if ('args' in term) for (const arg of term.args) gather(arg, into);
  into.add(term);
}

/** Everything that its answers are made of, and what its words name: no conditions, no slips. */
export function namesToWorkWith({ givens, parts, intro }: Family): ReadonlySet<string> {
  const computed = givens.flatMap(({ from }) => (from.kind === 'computed' ? [from.formula] : []));
  const formulas = [...computed, ...parts.map(({ formula }) => formula)];
  return new Set([
    ...formulas.flatMap((formula) => namesIn(formula).map(({ name }) => name)),
    ...[intro, ...parts.map(({ ask }) => ask)].flatMap((text) => namesAskedIn(text, 'en')),
  ]);
}

/** The names that a formula reads, each once. */
export function namesIn({ root }: Formula): readonly (Term & { readonly name: string })[] {
  const terms = new Set<Term>();
  gather(root, terms);
  return [...terms].filter((term) => 'name' in term);
}
