import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  covers,
  isCorrectOrder,
  partialOrder,
  precedes,
  predecessors,
  restrict,
  successors,
  type Pair,
} from '#engine/method/partial-order.ts';
import { anyOrder, chain, everyOrder, orderOf } from './orders.ts';

const stepsOf = (size: number) => [...Array(size).keys()];

describe('truth', () => {
  it('a chain of 100 binds every two of its steps', () => {
    const order = orderOf(chain(100));
    expect(predecessors(order, 99)).toEqual(stepsOf(99));
    expect(successors(order, 0)).toEqual(stepsOf(100).slice(1));
    expect(precedes(order, 31, 64)).toBe(true);
    expect(precedes(order, 64, 31)).toBe(false);
    expect(precedes(order, 64, 64)).toBe(false);
  });

  it('the shortest cycle is named, from its smallest step', () => {
    const long: readonly Pair[] = [
      [0, 1],
      [1, 2],
      [2, 3],
      [3, 0],
    ];
    const circular = (pairs: readonly Pair[]) => {
      const order = partialOrder(8, pairs);
      return order.ok ? 'none' : order.error;
    };
    expect(circular(long)).toEqual({ code: 'CIRCULAR', cycle: [0, 1, 2, 3] });
    expect(circular([...long, [6, 4], [4, 7], [7, 6]])).toEqual({
      code: 'CIRCULAR',
      cycle: [4, 7, 6],
    });
    expect(circular([...long, [5, 5]])).toEqual({ code: 'CIRCULAR', cycle: [5] });
  });

  it('a pair of a step that does not exist is refused with the pair named', () => {
    expect(() => partialOrder(3, [[0, 3]])).toThrow('[0, 3] is not a pair of steps below 3');
    expect(() => partialOrder(3, [[-1, 2]])).toThrow(RangeError);
  });

  it('the covers of a chain stated in full are its links', () => {
    const all = stepsOf(5).flatMap((a) => stepsOf(a).map((b): Pair => [b, a]));
    expect(covers(orderOf({ size: 5, pairs: all }))).toEqual(chain(5).pairs);
  });

  it('a sequence is no correct order when a step is missing, strange or done again', () => {
    const order = orderOf(chain(3));
    expect(isCorrectOrder(order, [0, 1, 2])).toBe(true);
    for (const wrong of [
      [0, 1],
      [0, 1, 3],
      [0, 1, 1],
      [0, 1, 2, 2],
      [1, 0, 2],
    ]) {
      expect(isCorrectOrder(order, wrong)).toBe(false);
    }
  });
});

describe('laws', () => {
  it('is irreflexive, transitive and holds what was stated', () => {
    fc.assert(
      fc.property(anyOrder(9), (stated) => {
        const order = orderOf(stated);
        for (const [a, b] of stated.pairs) expect(precedes(order, a, b)).toBe(true);
        for (const a of stepsOf(stated.size)) {
          expect(precedes(order, a, a)).toBe(false);
          for (const b of successors(order, a)) {
            expect(predecessors(order, b)).toContain(a);
            for (const c of successors(order, b)) expect(precedes(order, a, c)).toBe(true);
          }
        }
      }),
    );
  });

  it('orders two steps just when every correct order does', () => {
    fc.assert(
      fc.property(anyOrder(6), (stated) => {
        const order = orderOf(stated);
        const orders = everyOrder(stated);
        for (const a of stepsOf(stated.size)) {
          for (const b of stepsOf(stated.size)) {
            const always = orders.every((done) => done.indexOf(a) < done.indexOf(b));
            expect(precedes(order, a, b)).toBe(always);
          }
        }
      }),
    );
  });

  it('the covers state the same order, and none of them can be spared', () => {
    fc.assert(
      fc.property(anyOrder(), (stated) => {
        const order = orderOf(stated);
        const links = covers(order);
        expect(orderOf({ size: stated.size, pairs: links })).toEqual(order);
        for (const link of links) {
          const fewer = links.filter((other) => other !== link);
          expect(orderOf({ size: stated.size, pairs: fewer })).not.toEqual(order);
        }
      }),
    );
  });

  it('a restriction orders its members as the whole does', () => {
    const orderAndMembers = anyOrder(8).chain((stated) =>
      fc.tuple(fc.constant(stated), fc.shuffledSubarray(stepsOf(stated.size))),
    );
    fc.assert(
      fc.property(orderAndMembers, ([stated, members]) => {
        const whole = orderOf(stated);
        const part = restrict(whole, members);
        expect(part.size).toBe(members.length);
        members.forEach((a, i) =>
          members.forEach((b, j) => {
            expect(precedes(part, i, j)).toBe(precedes(whole, a, b));
            expect(predecessors(part, j).includes(i)).toBe(precedes(whole, a, b));
          }),
        );
      }),
    );
  });

  it('a permutation is a correct order just when no stated pair is inverted', () => {
    const orderAndSequence = anyOrder(6).chain((stated) =>
      fc.tuple(
        fc.constant(stated),
        fc.shuffledSubarray(stepsOf(stated.size), { minLength: stated.size }),
      ),
    );
    fc.assert(
      fc.property(orderAndSequence, ([stated, sequence]) => {
        const kept = stated.pairs.every(([a, b]) => sequence.indexOf(a) < sequence.indexOf(b));
        expect(isCorrectOrder(orderOf(stated), sequence)).toBe(kept);
      }),
    );
  });

  it('a named cycle goes round by stated pairs, and none is shorter', () => {
    const graph = fc
      .integer({ min: 1, max: 6 })
      .chain((size) =>
        fc.tuple(
          fc.constant(size),
          fc.array(fc.tuple(fc.nat(size - 1), fc.nat(size - 1)), { maxLength: 12 }),
        ),
      );
    fc.assert(
      fc.property(graph, ([size, pairs]) => {
        const order = partialOrder(size, pairs);
        const shortest = shortestWayRound(size, pairs);
        if (order.ok) {
          expect(shortest).toBe(Infinity);
          return;
        }
        const { cycle } = order.error;
        expect(cycle).toHaveLength(shortest);
        expect(cycle[0]).toBe(Math.min(...cycle));
        cycle.forEach((step, i) => {
          expect(pairs).toContainEqual([step, cycle[(i + 1) % cycle.length]]);
        });
      }),
    );
  });
});

/** By Floyd and Warshall's shortest paths. */
function shortestWayRound(size: number, pairs: readonly Pair[]): number {
  const steps = stepsOf(size);
  const far = steps.map((a) =>
    steps.map((b) => (pairs.some(([x, y]) => x === a && y === b) ? 1 : Infinity)),
  );
  for (const via of steps) {
    for (const a of steps) {
      for (const b of steps) {
        far[a]![b] = Math.min(far[a]![b]!, far[a]![via]! + far[via]![b]!);
      }
    }
  }
  return Math.min(...steps.map((step) => far[step]![step]!));
}
