/** On walls with few correct orders, every one of them, done with right settings and all waits kept, is accepted. */
import { expect, it } from 'vitest';
import { rational } from '#engine/measure/rational.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import type { Played } from '#engine/marking/attempt.ts';
import { review } from '#engine/marking/review.ts';
import { countOrders } from '#engine/method/count-orders.ts';
import { predecessors } from '#engine/method/partial-order.ts';
import { judge, middleOf } from '#engine/method/rule.ts';
import type { Ask, Sequence } from '#engine/method/sequence.ts';
import { walls } from './walls.ts';

const most = 1000n;

const ordersOf = ({ order }: Sequence): bigint => {
  const counted = countOrders(order);
  if (!counted.ok) throw new Error(counted.error.code);
  return counted.value.orders;
};

const few = walls.filter(({ sequence }) => ordersOf(sequence) <= most);

/** By trying every step that nothing left has to come before; no use is made of how orders are counted. */
function* ordersFrom(sequence: Sequence, done: readonly number[]): Generator<readonly number[]> {
  const { steps, order } = sequence;
  if (done.length === steps.length) yield done;
  for (const step of steps.keys()) {
    const isNext = !done.includes(step) && predecessors(order, step).every((p) => done.includes(p));
    if (isNext) yield* ordersFrom(sequence, [...done, step]);
  }
}

function right({ sheetNumber: { aim }, rule }: Ask): Quantity {
  return aim && judge(rule, aim).within ? aim : middleOf(rule);
}

/** Nothing is put up before all that was put up earlier is dry. */
function carefully({ steps }: Sequence, order: readonly number[]): readonly Played[] {
  let minute = rational(0);
  return order.map((place) => {
    const { id, asks, dries } = steps[place]!;
    const played = {
      card: id,
      settings: new Map(asks.map((ask) => [ask.id, right(ask)])),
      minute,
    };
    minute = minute.add(1n);
    if (dries) minute = minute.add(dries.least.value.div(60n));
    return played;
  });
}

it('there are such walls', () => {
  expect(few.length).toBeGreaterThan(5);
});

it.each(few)('every correct order is accepted: $name', ({ sequence }) => {
  const faults: unknown[] = [];
  let orders = 0n;
  for (const order of ordersFrom(sequence, [])) {
    orders += 1n;
    const { score, outcome, items, water } = review({
      sequence,
      played: carefully(sequence, order),
    });
    if (score !== 100 || outcome !== 'accept' || items.length > 0 || water.leaks.length > 0) {
      faults.push({ order, score, outcome, items });
    }
  }
  expect(faults.slice(0, 2)).toEqual([]);
  expect(orders).toBe(ordersOf(sequence));
});
