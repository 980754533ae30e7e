import {
  addBits,
  hasBit,
  isSubset,
  membersOf,
  noBits,
  overlap,
  setBit,
  type Bits,
} from './bits.ts';
import { shortestCycle } from './shortest-cycle.ts';
import { fault, ok, type Result } from '#engine/result.ts';

/**
 * What must come before what among the steps 0 to `size` - 1: a strict partial order, held in full, so
 * that `before[b]` and `after[a]` also name the steps that are bound only through others.
 */
export type PartialOrder = {
  readonly size: number;
  readonly before: readonly Bits[];
  readonly after: readonly Bits[];
};

export type Pair = readonly [before: number, after: number];

/** `cycle` is one of the shortest: each step must come before the next, and the last before the first. */
export type Circular = { readonly code: 'CIRCULAR'; readonly cycle: readonly number[] };

/**
 * The transitive closure of the pairs, along a topological sort (A. B. Kahn, "Topological sorting of
 * large networks", CACM 5, 1962): O(pairs x size / 32), and O(size x pairs) to name a cycle.
 */
export function partialOrder(size: number, pairs: Iterable<Pair>): Result<PartialOrder, Circular> {
  const next = Array.from({ length: size }, (): number[] => []);
  const waitsFor = new Uint32Array(size);
  for (const [first, second] of pairs) {
    if (!(first in next && second in next)) {
      throw new RangeError(`[${first}, ${second}] is not a pair of steps below ${size}`);
    }
    next[first]!.push(second);
    waitsFor[second]! += 1;
  }

  const sorted = [...next.keys()].filter((step) => waitsFor[step] === 0);
  for (const step of sorted) {
    for (const follower of next[step]!) {
      waitsFor[follower]! -= 1;
      if (waitsFor[follower] === 0) sorted.push(follower);
    }
  }
  if (sorted.length < size) return fault({ code: 'CIRCULAR', cycle: shortestCycle(next)! });

  const before = rows(size);
  const after = rows(size);
  for (const step of sorted) {
    for (const follower of next[step]!) {
      addBits(before[follower]!, before[step]!);
      setBit(before[follower]!, step);
    }
  }
  for (const step of sorted.reverse()) {
    for (const follower of next[step]!) {
      addBits(after[step]!, after[follower]!);
      setBit(after[step]!, follower);
    }
  }
  return ok({ size, before, after });
}

const rows = (size: number): readonly Uint32Array[] =>
  Array.from({ length: size }, () => noBits(size));

export const precedes = (order: PartialOrder, first: number, second: number): boolean =>
  hasBit(order.after[first]!, second);

/** Ascending, as are the successors. */
export const predecessors = (order: PartialOrder, step: number): readonly number[] =>
  membersOf(order.before[step]!);

export const successors = (order: PartialOrder, step: number): readonly number[] =>
  membersOf(order.after[step]!);

/** The pairs with no step between them: the fewest that state the whole order (transitive reduction). */
export const covers = (order: PartialOrder): readonly Pair[] =>
  order.after.flatMap((followers, first) =>
    membersOf(followers)
      .filter((second) => !overlap(followers, order.before[second]!))
      .map((second): Pair => [first, second]),
  );

/** The order among these steps alone, numbered as they are listed. */
export function restrict(order: PartialOrder, members: readonly number[]): PartialOrder {
  const among = (relation: readonly Bits[]) =>
    members.map((step) => {
      const row = noBits(members.length);
      members.forEach((other, index) => {
        if (hasBit(relation[step]!, other)) setBit(row, index);
      });
      return row;
    });
  return { size: members.length, before: among(order.before), after: among(order.after) };
}

/** Whether the sequence holds every step once, and none before what it must follow. */
export function isCorrectOrder(order: PartialOrder, sequence: readonly number[]): boolean {
  const done = noBits(order.size);
  for (const step of sequence) {
    const needs = order.before[step];
    if (!needs || hasBit(done, step) || !isSubset(needs, done)) return false;
    setBit(done, step);
  }
  return sequence.length === order.size;
}
