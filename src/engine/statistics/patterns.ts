/**
 * Persons who answered alike, counted: what a fit costs grows with the different patterns, not with the
 * persons. Patterns of the same answered items stand together, as they share what those items leave of
 * each ability. O(persons x items).
 */
import { distinctRows } from './distinct-rows.ts';
import { absent, type Responses } from './responses.ts';

export type Patterns = {
  readonly items: number;
  /** With an answer to one of these items at least. */
  readonly persons: number;
  /** How many persons have each pattern. */
  readonly counts: Float64Array;
  /**
   * The items that pattern `at` has right: `right` from `rightFrom[at]` up to but not `rightFrom[at +
   * 1]`.
   */
  readonly right: Uint32Array;
  readonly rightFrom: Uint32Array;
  /** How many persons have each item right. */
  readonly rights: Float64Array;
  readonly forms: readonly Form[];
};

/** Patterns `from` up to but not `to`, all with these items answered and no other. */
export type Form = {
  readonly from: number;
  readonly to: number;
  readonly answered: Uint32Array;
};

/** Of the items named, in that order; persons who answered none of them are left out. */
export function patternsOf(responses: Responses, named: readonly number[]): Patterns {
  const items = named.length;
  const scores = columnsOf(responses, named);
  const { first, kind } = distinctRows(scores, responses.persons, items);
  const persons = new Float64Array(first.length);
  for (const one of kind) persons[one]! += 1;

  const masks = new Uint8Array(first.length * items);
  for (const [at, row] of first.entries()) {
    for (let item = 0; item < items; item += 1) {
      masks[at * items + item] = scores[row * items + item] === absent ? 0 : 1;
    }
  }
  const byForm = distinctRows(masks, first.length, items);
  const members = byForm.first.map((): number[] => []);
  for (let at = 0; at < first.length; at += 1) members[byForm.kind[at]!]!.push(at);

  const order: number[] = [];
  const forms: Form[] = [];
  for (const [form, own] of members.entries()) {
    const mask = masks.subarray(byForm.first[form]! * items, (byForm.first[form]! + 1) * items);
    const answered = Uint32Array.from([...mask.keys()].filter((item) => mask[item] === 1));
    if (answered.length === 0) continue;
    forms.push({ from: order.length, to: order.length + own.length, answered });
    for (const one of own) order.push(one);
  }

  const rights = new Float64Array(items);
  const rightFrom = new Uint32Array(order.length + 1);
  const right: number[] = [];
  for (const [at, pattern] of order.entries()) {
    for (let item = 0; item < items; item += 1) {
      if (scores[first[pattern]! * items + item] !== 1) continue;
      right.push(item);
      rights[item]! += persons[pattern]!;
    }
    rightFrom[at + 1] = right.length;
  }
  const counts = Float64Array.from(order, (pattern) => persons[pattern]!);
  return {
    items,
    persons: counts.reduce((sum, count) => sum + count, 0),
    counts,
    right: Uint32Array.from(right),
    rightFrom,
    rights,
    forms,
  };
}

function columnsOf({ persons, items, scores }: Responses, named: readonly number[]): Uint8Array {
  const columns = new Uint8Array(persons * named.length);
  for (let person = 0; person < persons; person += 1) {
    for (let at = 0; at < named.length; at += 1) {
      columns[person * named.length + at] = scores[person * items + named[at]!]!;
    }
  }
  return columns;
}
