import { describe, expect, it } from 'vitest';
import type { Attempt } from '#engine/marking/attempt.ts';
import { review } from '#engine/marking/review.ts';
import { lineUp } from '#engine/method/line-up.ts';
import { covers, predecessors } from '#engine/method/partial-order.ts';
import { orderSampler } from '#engine/method/sample-order.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import { below, randomFrom } from '#engine/random.ts';
import { walls } from './walls.ts';

const played = (sequence: Sequence, steps: readonly number[]): Attempt => ({
  sequence,
  played: steps.map((step) => ({
    card: sequence.steps[step]!.id,
    settings: new Map(),
    minute: undefined,
  })),
});

const drawnOrders = (sequence: Sequence, count: number): readonly (readonly number[])[] => {
  const sampler = orderSampler(sequence.order);
  if (!sampler.ok) throw new Error(sampler.error.code);
  const random = randomFrom('orders');
  return Array.from({ length: count }, () => sampler.value((n) => below(random, n)));
};

/** A correct order in which `before` comes immediately before `after`, and the same with both swapped. */
function swapped({ order, steps }: Sequence, before: number, after: number): readonly number[] {
  const needed = new Set([...predecessors(order, before), ...predecessors(order, after)]);
  needed.delete(before);
  const rest = steps.flatMap((_, step) =>
    needed.has(step) || step === before || step === after ? [] : [step],
  );
  return [...lineUp(order, [...needed]), after, before, ...lineUp(order, rest)];
}

describe('laws of marking, on every wall', () => {
  it.each(walls)('a correct order scores 100 and lets no water in: $name', ({ sequence }) => {
    for (const order of drawnOrders(sequence, 10)) {
      const { score, outcome, items, nearestOrder, water } = review(played(sequence, order));
      expect({ score, outcome, items, leaks: water.leaks }).toEqual({
        score: 100,
        outcome: 'accept',
        items: [],
        leaks: [],
      });
      expect(nearestOrder).toEqual(order.map((step) => sequence.steps[step]!.id));
    }
  });

  it.each(walls)('an adjacent swap across a constraint is caught: $name', ({ sequence }) => {
    for (const [before, after] of covers(sequence.order)) {
      const { items, score } = review(played(sequence, swapped(sequence, before, after)));
      expect(items.map(({ kind }) => kind)).toEqual(['out-of-order']);
      expect(items[0]).toMatchObject({ places: 1, broken: [{ before, after }] });
      expect(score).toBeLessThan(100);
    }
  });

  it.each(walls)('the lines of a score add up, whatever was played: $name', ({ sequence }) => {
    const random = randomFrom('shuffled');
    const shuffled = sequence.steps.map((_, step) => step);
    shuffled.sort(() => Number(below(random, 3n)) - 1);
    for (const steps of [[], shuffled, shuffled.slice(3), [...shuffled, ...shuffled.slice(0, 4)]]) {
      const { score, items } = review(played(sequence, steps));
      const lost = items.reduce((sum, { points }) => sum + Math.round(points * 10), 0);
      expect(lost).toBe(Math.round(1000 - score * 10));
    }
  });

  it.each(walls)('leaving out a critical step opens a way for water: $name', ({ sequence }) => {
    const order = sequence.steps.map((_, step) => step);
    for (const step of order.filter((step) => sequence.steps[step]!.severity === 'critical')) {
      const { outcome, water } = review(
        played(
          sequence,
          order.filter((other) => other !== step),
        ),
      );
      expect(outcome).not.toBe('accept');
      expect(water.leaks, sequence.steps[step]!.id).not.toEqual([]);
      expect(water.repair).toEqual([0]);
    }
  });

  it.each(walls)('an empty wall scores 0: $name', ({ sequence }) => {
    expect(review(played(sequence, []))).toMatchObject({ score: 0, outcome: 'rework' });
  });
});
