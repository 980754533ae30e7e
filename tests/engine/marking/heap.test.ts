import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Heap } from '#engine/marking/heap.ts';

describe('laws', () => {
  it('gives back the least that is in it, whenever it is asked', () => {
    const orders = fc.array(fc.option(fc.integer({ min: 0, max: 20 })));
    fc.assert(
      fc.property(orders, (pushesAndPops) => {
        const heap = new Heap<number>((a, b) => a < b);
        let kept: number[] = [];
        for (const item of pushesAndPops) {
          if (item === null) {
            const least = kept.toSorted((a, b) => a - b)[0];
            expect(heap.pop()).toBe(least);
            kept = kept.filter((_, index) => index !== kept.indexOf(least!));
          } else {
            heap.push(item);
            kept.push(item);
          }
        }
      }),
    );
  });
});
