/**
 * The shortest way round in a directed graph, by breadth-first search from every node: O(nodes x
 * arcs). Of several as short, the one through the smallest number, which it starts with.
 */
export function shortestCycle(next: readonly (readonly number[])[]): readonly number[] | undefined {
  let shortest: readonly number[] | undefined;
  for (const start of next.keys()) {
    const cycle = cycleThrough(next, start);
    if (cycle && (!shortest || cycle.length < shortest.length)) shortest = cycle;
  }
  return shortest;
}

function cycleThrough(
  next: readonly (readonly number[])[],
  start: number,
): readonly number[] | undefined {
  const cameFrom = new Map<number, number>();
  for (const node of reachedFrom(next, start, cameFrom)) {
    if (!next[node]!.includes(start)) continue;
    const back = [node];
    for (let at = node; at !== start; back.push(at)) at = cameFrom.get(at)!;
    return back.toReversed();
  }
  return undefined;
}

function* reachedFrom(
  next: readonly (readonly number[])[],
  start: number,
  cameFrom: Map<number, number>,
): Generator<number> {
  const queue = [start];
  for (const node of queue) {
    yield node;
    for (const neighbour of next[node]!) {
      if (neighbour === start || cameFrom.has(neighbour)) continue;
      cameFrom.set(neighbour, node);
      queue.push(neighbour);
    }
  }
}
