/**
 * A correct order drawn so that each is as likely as any other. Parts in parallel are shuffled into
 * one another like packs of cards; a tangle is walked back from the full ideal to the empty one, each
 * last step drawn in proportion to the number of orders that end with it. Costs what counting costs,
 * with every level of a tangle kept; after that, O(size^2 / 32) a draw outside tangles.
 */
import { clearBit, membersOf, overlap, setBit } from './bits.ts';
import type { TooManyIdeals } from './count-orders.ts';
import { levelsOf, type IdealLevel } from './ideal-level.ts';
import type { PartialOrder } from './partial-order.ts';
import { shapeOf, type Shape } from './shape.ts';
import { fault, ok, type Result } from '#engine/result.ts';

/** A whole number from 0 up to, but not including, `below`, each as likely. */
export type Draw = (below: bigint) => bigint;

export type OrderSampler = (draw: Draw) => readonly number[];

/** One draw; for many, keep an `orderSampler`. */
export function sampleOrder(
  order: PartialOrder,
  draw: Draw,
): Result<readonly number[], TooManyIdeals> {
  const sampler = orderSampler(order);
  return sampler.ok ? ok(sampler.value(draw)) : sampler;
}

/** `limit` is the most ideals that one tangle may have: all of them stay in memory. */
export const orderSampler = (
  order: PartialOrder,
  limit = 1_000_000,
): Result<OrderSampler, TooManyIdeals> => samplerOf(shapeOf(order), limit);

function samplerOf(shape: Shape, limit: number): Result<OrderSampler, TooManyIdeals> {
  if (shape.kind === 'step') return ok(() => [shape.step]);
  if (shape.kind === 'tangle') return tangleSampler(shape.steps, shape.order, limit);
  const parts: OrderSampler[] = [];
  for (const part of shape.parts) {
    const sampler = samplerOf(part, limit);
    if (!sampler.ok) return sampler;
    parts.push(sampler.value);
  }
  return ok((draw) => {
    const sequences = parts.map((part) => part(draw));
    return shape.kind === 'series' ? sequences.flat() : shuffleTogether(sequences, draw);
  });
}

/** The next step comes from a sequence as often as it has steps left. */
function shuffleTogether(sequences: readonly (readonly number[])[], draw: Draw): readonly number[] {
  const tickets = sequences.flatMap((sequence, index) => sequence.map(() => index));
  const iterators = sequences.map((sequence) => sequence.values());
  const shuffled: number[] = [];
  while (tickets.length > 0) {
    const [index] = tickets.splice(Number(draw(BigInt(tickets.length))), 1);
    shuffled.push(iterators[index!]!.next().value!);
  }
  return shuffled;
}

function tangleSampler(
  steps: readonly number[],
  order: PartialOrder,
  limit: number,
): Result<OrderSampler, TooManyIdeals> {
  const levels: IdealLevel[] = [];
  for (const level of levelsOf(order, limit)) {
    if (!level) return fault({ code: 'TOO_MANY_IDEALS', limit });
    levels.push(level);
  }
  return ok((draw) => {
    const ideal = levels.at(-1)!.idealAt(0);
    const backwards: number[] = [];
    for (let size = order.size; size > 0; size -= 1) {
      const last = lastStep(order, ideal, levels[size]!, levels[size - 1]!, draw);
      clearBit(ideal, last);
      backwards.push(steps[last]!);
    }
    return backwards.reverse();
  });
}

/** Drawn from the steps that nothing in the ideal must follow. Leaves the ideal as it was. */
function lastStep(
  order: PartialOrder,
  ideal: Uint32Array,
  level: IdealLevel,
  below: IdealLevel,
  draw: Draw,
): number {
  let ticket = draw(level.countOf(ideal));
  for (const step of membersOf(ideal)) {
    if (overlap(order.after[step]!, ideal)) continue;
    clearBit(ideal, step);
    const count = below.countOf(ideal);
    setBit(ideal, step);
    if (ticket < count) return step;
    ticket -= count;
  }
  throw new RangeError('draw(below) answered with a number that is not below');
}
