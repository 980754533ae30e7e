/**
 * The lightest way to touch every pair, at its first or at its second: a minimum cut of the network
 *
 *   source --weight--> firsts --Infinity, for each pair--> seconds --weight--> sink
 *
 * by E. A. Dinic's blocking flows ("Algorithm for solution of a problem of maximum flow in networks with
 * power estimation", Soviet Math. Doklady 11, 1970): O(members^2 x pairs) at worst, in practice about
 * members x pairs. Weights are whole, so the sums are exact.
 *
 * Of several as light it is the one with the fewest firsts and the most seconds, the cut nearest to the
 * sink. There is just one such, whatever the flow, as minimum cuts form a lattice.
 */
import type { Pair } from '#engine/method/partial-order.ts';

/** By member, whether it touches the pairs that it is the first of, and those that it is the second of. */
export type Cover = { readonly firsts: readonly boolean[]; readonly seconds: readonly boolean[] };

/** Weights are by member, whole and above 0. A member may be first and second, and is paid for as each. */
export function lightestCover(pairs: readonly Pair[], weights: readonly number[]): Cover {
  const byFirst = chainsOf(pairs, 0, weights.length);
  const bySecond = chainsOf(pairs, 1, weights.length);
  const supply = weights.slice();
  const demand = weights.slice();
  const flow = Array<number>(pairs.length).fill(0);

  /** Pairs on the shortest way to the sink that can take more flow; -1 where there is none. */
  const farOfFirst = Array<number>(weights.length).fill(-1);
  const farOfSecond = farOfFirst.slice();
  const measure = (): void => {
    const queue: number[] = [];
    for (let member = 0; member < weights.length; member += 1) {
      farOfFirst[member] = -1;
      farOfSecond[member] = demand[member] === 0 ? -1 : 0;
      if (demand[member] !== 0) queue.push(member);
    }
    for (const second of queue) {
      const far = farOfSecond[second]! + 1;
      for (let pair = bySecond.start[second]!; pair !== -1; pair = bySecond.next[pair]!) {
        const first = pairs[pair]![0];
        if (farOfFirst[first] !== -1) continue;
        farOfFirst[first] = far;
        for (let back = byFirst.start[first]!; back !== -1; back = byFirst.next[back]!) {
          const other = pairs[back]![1];
          if (flow[back] === 0 || farOfSecond[other] !== -1) continue;
          farOfSecond[other] = far;
          queue.push(other);
        }
      }
    }
  };

  /** Where each chain is still worth trying since the last measure. */
  let openFirst: number[] = [];
  let openSecond: number[] = [];
  const pushFrom = (first: number, most: number): number => {
    for (; openFirst[first] !== -1; openFirst[first] = byFirst.next[openFirst[first]!]!) {
      const pair = openFirst[first]!;
      const second = pairs[pair]![1];
      if (farOfSecond[second] !== farOfFirst[first]! - 1) continue;
      const pushed = pushInto(second, most);
      if (pushed === 0) continue;
      flow[pair]! += pushed;
      return pushed;
    }
    return 0;
  };
  /** To the sink, or back along a pair whose first can turn elsewhere. */
  const pushInto = (second: number, most: number): number => {
    if (farOfSecond[second] === 0) {
      const taken = Math.min(most, demand[second]!);
      demand[second]! -= taken;
      return taken;
    }
    for (; openSecond[second] !== -1; openSecond[second] = bySecond.next[openSecond[second]!]!) {
      const pair = openSecond[second]!;
      const first = pairs[pair]![0];
      if (flow[pair] === 0 || farOfFirst[first] !== farOfSecond[second]) continue;
      const pushed = pushFrom(first, Math.min(most, flow[pair]!));
      if (pushed === 0) continue;
      flow[pair]! -= pushed;
      return pushed;
    }
    return 0;
  };

  for (let more = true; more;) {
    more = false;
    measure();
    openFirst = byFirst.start.slice();
    openSecond = bySecond.start.slice();
    for (let first = 0; first < weights.length; first += 1) {
      while (farOfFirst[first] !== -1 && supply[first]! > 0) {
        const pushed = pushFrom(first, supply[first]!);
        if (pushed === 0) break;
        supply[first]! -= pushed;
        more = true;
      }
    }
  }
  return {
    firsts: farOfFirst.map((far) => far !== -1),
    seconds: farOfSecond.map((far) => far === -1),
  };
}

/** Linked lists: each member's pairs from `start` on, by `next`, to -1. */
type Chains = { readonly start: readonly number[]; readonly next: readonly number[] };

function chainsOf(pairs: readonly Pair[], side: 0 | 1, members: number): Chains {
  const start = Array<number>(members).fill(-1);
  const next: number[] = [];
  for (const pair of pairs) {
    const newest = next.push(start[pair[side]]!) - 1;
    start[pair[side]] = newest;
  }
  return { start, next };
}
