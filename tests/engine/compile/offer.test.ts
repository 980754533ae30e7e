import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { offersRight } from '#engine/compile/offer.ts';
import { add, compare, equals } from '#engine/measure/arithmetic.ts';
import { quantity } from '#engine/measure/conversion.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import { rational } from '#engine/measure/rational.ts';
import type { Entry, FixedRule } from '#engine/method/data-sheet.ts';
import { judge } from '#engine/method/rule.ts';

/** Eighths of an inch around 0. */
const length: fc.Arbitrary<Quantity<'length'>> = fc
  .integer({ min: -24, max: 24 })
  .map((eighths) => quantity(rational(eighths, 8), 'in'));
const distance = fc
  .integer({ min: 1, max: 9 })
  .map((eighths) => quantity(rational(eighths, 8), 'in'));

const rule: fc.Arbitrary<FixedRule> = fc.oneof(
  fc.record({
    kind: fc.constantFrom('exactly' as const, 'at-least' as const, 'at-most' as const),
    value: length,
  }),
  fc.record({ kind: fc.constant('about' as const), value: length, within: distance }),
  fc
    .tuple(length, distance)
    .map(([low, more]) => ({ kind: 'between' as const, low, high: add(low, more) })),
);

const entry: fc.Arbitrary<Entry> = fc.oneof(
  fc
    .tuple(length, distance, distance)
    .map(([from, more, by]) => ({ kind: 'range' as const, from, to: add(from, more), by })),
  fc
    .uniqueArray(length, { minLength: 2, maxLength: 5, comparator: equals })
    .map((values) => ({ kind: 'one-of' as const, values: values.toSorted(compare) })),
);

function* offered(entry: Entry): Generator<Quantity> {
  if (entry.kind === 'one-of') yield* entry.values;
  else {
    const { from, to, by } = entry;
    for (let value = from; compare(value, to) <= 0; value = add(value, by)) yield value;
  }
}

describe('laws', () => {
  it('a right value is on offer if and only if one of the values is judged right', () => {
    fc.assert(
      fc.property(rule, entry, (rule, entry) => {
        const right = [...offered(entry)].some((value) => judge(rule, value).within);
        expect(offersRight(rule, entry)).toBe(right);
      }),
      { numRuns: 1000 },
    );
  });
});
