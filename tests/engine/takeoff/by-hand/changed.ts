import type { Family, Part } from '#engine/takeoff/family.ts';
import type { Operation, Term } from '#engine/takeoff/formula.ts';

/** What each operation is taken for; the numbers of a slate are bare, so any fits any. */
const others: Readonly<Partial<Record<Operation, Operation>>> = {
  add: 'subtract',
  subtract: 'add',
  multiply: 'divide',
  divide: 'multiply',
  ceil: 'floor',
  floor: 'ceil',
  min: 'max',
  max: 'min',
  and: 'or',
  or: 'and',
  'at-most': 'more',
  'at-least': 'less',
  less: 'at-least',
  more: 'at-most',
};

/** On places of its own from there on, so that nothing worked out before is taken for it. */
type Fresh = { next: number };

type Changed = { readonly what: string; readonly family: Family };

/** The family with one operation in the answer of that part taken for another, in every way. */
export function* changedIn(family: Family, part: Part): Generator<Changed> {
  for (const [what, root] of changes(part.formula.root, { next: family.terms })) {
    yield { what, family: withPart(family, part, { ...part, formula: { ...part.formula, root } }) };
  }
  const { answer } = part;
  if (answer.kind === 'quantity' && answer.round && answer.round.how !== 'nearest') {
    const how = answer.round.how === 'up' ? 'down' : 'up';
    const round = { ...answer.round, how } as const;
    const changed = { ...part, answer: { ...answer, round } };
    yield { what: `round ${how}`, family: withPart(family, part, changed) };
  }
}

const withPart = (family: Family, part: Part, changed: Part): Family => ({
  ...family,
  terms: family.terms + 400,
  parts: family.parts.map((each) => (each === part ? changed : each)),
});

function* changes(term: Term, fresh: Fresh): Generator<readonly [string, Term]> {
  if (!('args' in term)) return;
  const place = (fresh.next += 1);
  const other = others[term.op];
  if (other) yield [`${term.op} as ${other}`, { ...term, op: other, place }];
  if (term.op === 'if') {
    const [that, first, second] = term.args as readonly [Term, Term, Term];
    yield ['if the other way', { ...term, args: [that, second, first], place }];
  }
  for (const [at, arg] of term.args.entries()) {
    for (const [what, changed] of changes(arg, fresh)) {
      yield [what, { ...term, args: term.args.with(at, changed), place: (fresh.next += 1) }];
    }
  }
}
