import { compare } from '#engine/measure/arithmetic.ts';
import { type Quantity, ofBaseUnits } from '#engine/measure/quantity.ts';
import { approximate } from '#engine/measure/rational.ts';
import type { Entry } from './data-sheet.ts';

/** The values that can be chosen, ascending: of a range `from`, `from` + `by`, ... up to `to`. */
export function choicesOf(entry: Entry): readonly Quantity[] {
  if (entry.kind === 'one-of') return entry.values;
  const { from, to, by } = entry;
  const steps = approximate(to.value.sub(from.value).div(by.value).floor());
  return Array.from({ length: steps + 1 }, (_, place) =>
    ofBaseUnits(from.value.add(by.value.mul(BigInt(place))), from.dimension),
  );
}

/** The smallest and the largest value that can be set, both included. */
export function limitsOf(entry: Entry): { readonly from: Quantity; readonly to: Quantity } {
  if (entry.kind === 'range') return entry;
  return { from: entry.values[0]!, to: entry.values.at(-1)! };
}

/** The next choice above (1) or below (-1); beyond the last one, that one. */
export function nudged(entry: Entry, value: Quantity, direction: 1 | -1): Quantity {
  const choices = choicesOf(entry);
  const next =
    direction === 1
      ? choices.find((choice) => compare(choice, value) > 0)
      : choices.findLast((choice) => compare(choice, value) < 0);
  return next ?? choices.at(direction === 1 ? -1 : 0)!;
}

/** A range takes what lies between its steps too, its ends included; a list nothing but its values. */
export function isSettable(entry: Entry, value: Quantity): boolean {
  if (entry.kind === 'one-of') return entry.values.some((one) => compare(one, value) === 0);
  return compare(value, entry.from) >= 0 && compare(value, entry.to) <= 0;
}
