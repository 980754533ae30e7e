import { describe, expect, it } from 'vitest';
import { countOrders } from '#engine/method/count-orders.ts';
import { isCorrectOrder } from '#engine/method/partial-order.ts';
import { orderCounts } from './order-counts.ts';
import { walls } from './walls.ts';

describe('no-regression', () => {
  it('knows the number of correct orders of every shipped wall', () => {
    const counted = walls.map(({ name, sequence }) => {
      const { steps, order } = sequence;
      const count = countOrders(order);
      if (!count.ok) throw new Error(count.error.code);
      return [name, steps.length, count.value.orders, count.value.ideals];
    });
    expect(counted).toEqual(orderCounts);
  });
});

describe('laws', () => {
  it.each(walls)('the order as written is a correct one: $name', ({ sequence }) => {
    expect(isCorrectOrder(sequence.order, [...sequence.steps.keys()])).toBe(true);
  });
});
