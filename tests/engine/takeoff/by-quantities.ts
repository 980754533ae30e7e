/**
 * A second way to work out a formula, which shares nothing with the engine's: quantity by quantity, with
 * the checked arithmetic of dimensions. Slow, and only for comparing.
 */
import {
  add,
  compare,
  divide,
  multiply,
  negate,
  power,
  subtract,
} from '#engine/measure/arithmetic.ts';
import { dimensionOf } from '#engine/measure/dimension.ts';
import { ofBaseUnits, type Quantity } from '#engine/measure/quantity.ts';
import { one, roundToMultiple } from '#engine/measure/rational.ts';
import type { Term } from '#engine/takeoff/formula.ts';
import type { Amount } from '#engine/takeoff/instance.ts';

export type Lookup = (term: Term & { readonly name: string }) => Amount;

export function byQuantities(term: Term, lookup: Lookup): Amount {
  if (term.op === 'value') return term.value;
  if (!('args' in term)) return lookup(term);
  const at = (place: number): Amount => byQuantities(term.args[place]!, lookup);
  const quantity = (place: number): Quantity => {
    const found = at(place);
    if (typeof found === 'boolean') throw new Error('A quantity was wanted.');
    return found;
  };
  const rounded = (how: 'up' | 'down' | 'nearest'): Quantity => {
    const x = quantity(0);
    const step = term.args.length > 1 ? quantity(1) : ofBaseUnits(one, dimensionOf({}));
    return ofBaseUnits(roundToMultiple(x.value, step.value, how), x.dimension);
  };
  const sign = (): number => {
    const [a, b] = [at(0), at(1)];
    return typeof a === 'boolean' || typeof b === 'boolean' ? Number(a) - Number(b) : compare(a, b);
  };
  switch (term.op) {
    case 'add':
      return add(quantity(0), quantity(1));
    case 'subtract':
      return subtract(quantity(0), quantity(1));
    case 'multiply':
      return multiply(quantity(0), quantity(1));
    case 'divide':
      return divide(quantity(0), quantity(1));
    case 'power':
      return power(quantity(0), Number(quantity(1).value.n));
    case 'negate':
      return negate(quantity(0));
    case 'ceil':
      return rounded('up');
    case 'floor':
      return rounded('down');
    case 'round':
      return rounded('nearest');
    case 'min':
    case 'max': {
      const all = term.args.map((_, place) => quantity(place));
      const sorted = all.toSorted((a, b) => a.value.compare(b.value));
      return term.op === 'min' ? sorted[0]! : sorted.at(-1)!;
    }
    case 'if':
      return at(0) === true ? at(1) : at(2);
    case 'and':
      return at(0) === true && at(1) === true;
    case 'or':
      return at(0) === true || at(1) === true;
    case 'not':
      return at(0) !== true;
    case 'less':
      return sign() < 0;
    case 'at-most':
      return sign() <= 0;
    case 'more':
      return sign() > 0;
    case 'at-least':
      return sign() >= 0;
    case 'equal':
      return sign() === 0;
    case 'different':
      return sign() !== 0;
  }
}
