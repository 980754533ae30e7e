import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { moved } from '#ui/written/order-kept.ts';

describe('laws', () => {
  const list = fc.uniqueArray(fc.integer(), { minLength: 1, maxLength: 8 });

  test('moving one keeps all, and moving it back restores the order', () => {
    fc.assert(
      fc.property(list, fc.nat(7), fc.constantFrom(-1, 1), (order, from, by) => {
        const after = moved(order, from, by);
        expect(after.toSorted()).toEqual(order.toSorted());
        if (after !== order) expect(moved(after, from + by, -by)).toEqual(order);
      }),
    );
  });

  test('nothing leaves the list at either end', () => {
    expect(moved([1, 2, 3], 0, -1)).toEqual([1, 2, 3]);
    expect(moved([1, 2, 3], 2, 1)).toEqual([1, 2, 3]);
    expect(moved([1, 2, 3], 0, 1)).toEqual([2, 1, 3]);
  });
});
