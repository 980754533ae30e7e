import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lineUp } from '#engine/method/line-up.ts';
import { anyOrder, beside, chain, everyOrder, orderOf } from './orders.ts';

describe('truth', () => {
  it('what is in the way of nothing waits no longer than it must', () => {
    expect(lineUp(orderOf(chain(4)), [2, 3, 0])).toEqual([0, 2, 3]);
    expect(lineUp(orderOf(beside(chain(2), chain(1))), [1, 2, 0])).toEqual([2, 0, 1]);
  });
});

describe('laws', () => {
  it('of all correct orders it is the first, by place in the list', () => {
    const orderAndList = anyOrder(6).chain((stated) =>
      fc.tuple(
        fc.constant(stated),
        fc.shuffledSubarray([...Array(stated.size).keys()], { minLength: stated.size }),
      ),
    );
    fc.assert(
      fc.property(orderAndList, ([stated, list]) => {
        const placesIn = (order: readonly number[]) => order.map((step) => list.indexOf(step));
        const best = everyOrder(stated)
          .map((order) => placesIn(order).join(''))
          .toSorted()[0];
        expect(placesIn(lineUp(orderOf(stated), list)).join('')).toBe(best);
      }),
    );
  });
});
