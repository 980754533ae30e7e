import { clearBit, hasBit, noBits, overlap, setBit, type Bits } from './bits.ts';
import type { PartialOrder } from './partial-order.ts';

/**
 * Puts the steps in a correct order that follows the list as far as it can: each place goes to the
 * first step in the list that nothing still waiting must precede. O(steps^2 x size / 32) at worst, and
 * O(steps x size / 32) for a list that is correct.
 */
export function lineUp(order: PartialOrder, list: readonly number[]): readonly number[] {
  const waiting = noBits(order.size);
  for (const step of list) setBit(waiting, step);
  const sequence: number[] = [];
  for (let front = 0; front < list.length; front += 1) {
    while (hasBit(waiting, list[front]!)) {
      const next = firstFree(order, list, front, waiting);
      clearBit(waiting, next);
      sequence.push(next);
    }
  }
  return sequence;
}

function firstFree(
  order: PartialOrder,
  list: readonly number[],
  front: number,
  waiting: Bits,
): number {
  for (let place = front; place < list.length; place += 1) {
    const step = list[place]!;
    if (hasBit(waiting, step) && !overlap(order.before[step]!, waiting)) return step;
  }
  throw new RangeError('the steps that wait go round in a circle');
}
