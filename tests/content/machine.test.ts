import { describe, expect, it } from 'vitest';
import { type AnyMachineSnapshot, initialTransition, transition } from 'xstate';
import { getAdjacencyMap } from 'xstate/graph';
import { countOrders } from '#engine/method/count-orders.ts';
import { installMachine, placing } from '#engine/method/install-machine.ts';
import { lineUp } from '#engine/method/line-up.ts';
import { predecessors } from '#engine/method/partial-order.ts';
import { orderSampler } from '#engine/method/sample-order.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import { below, randomFrom, shuffle } from '#engine/random.ts';
import { readySteps } from '#engine/marking/guidance.ts';
import { content, type Wall, walls } from './walls.ts';

const isDrying = (type: string): boolean => type.startsWith('xstate.after.');
const keyOf = (state: AnyMachineSnapshot): string => JSON.stringify(state.value);

/**
 * How many orders of placing the machine accepts, counted over its graph. What is drying is left to
 * dry before the next card, so that each order is one path.
 */
function acceptedOrders(sequence: Sequence): bigint {
  const machine = installMachine(sequence);
  const graph = getAdjacencyMap(machine, {
    events: machine.events.map((type) => ({ type })) as never[],
    serializeState: keyOf,
  });
  const movesFrom = (key: string) =>
    Object.values(graph[key as keyof typeof graph]!.transitions).filter(
      ({ state }) => keyOf(state) !== key,
    );
  const settled = (key: string): string => {
    const drying = movesFrom(key).find(({ event }) => isDrying(event.type));
    return drying ? settled(keyOf(drying.state)) : key;
  };
  const counted = new Map<string, bigint>();
  const count = (key: string): bigint => {
    const known = counted.get(key);
    if (known !== undefined) return known;
    const moves = movesFrom(key);
    const isEnd = graph[key as keyof typeof graph]!.state.status === 'done';
    const orders = moves.reduce(
      (sum, { state }) => sum + count(settled(keyOf(state))),
      isEnd ? 1n : 0n,
    );
    counted.set(key, orders);
    return orders;
  };
  return count(settled(keyOf(initialTransition(machine)[0])));
}

/** Places one card and lets it dry if it goes on wet; `undefined` where the machine refuses it. */
function placed(
  machine: ReturnType<typeof installMachine>,
  state: AnyMachineSnapshot,
  stepId: string,
): AnyMachineSnapshot | undefined {
  if (!state.can(placing(stepId))) return undefined;
  const [wet] = transition(machine, state as never, placing(stepId));
  const drying = machine.events.find(
    (type) => isDrying(type) && type.endsWith(`.${stepId}.curing`),
  );
  return drying ? transition(machine, wet, { type: drying } as never)[0] : wet;
}

const idealsOf = ({ sequence }: Wall): bigint => {
  const counted = countOrders(sequence.order);
  if (!counted.ok) throw new Error(counted.error.code);
  return counted.value.ideals;
};

const readyIn = ({ steps }: Sequence, state: AnyMachineSnapshot): readonly number[] =>
  steps.flatMap(({ id }, step) => (state.can(placing(id)) ? [step] : []));

function drawnOrders({ order }: Sequence, count: number): readonly (readonly number[])[] {
  const sampler = orderSampler(order);
  if (!sampler.ok) throw new Error(sampler.error.code);
  const random = randomFrom('machine');
  return Array.from({ length: count }, () => sampler.value((n) => below(random, n)));
}

/** Of each method the two walls with the fewest states: walking a graph is slow. */
const small = [...content.methods.keys()].flatMap((method) =>
  walls
    .filter(({ sequence }) => sequence.method.id === method)
    .map((wall) => ({ ...wall, ideals: idealsOf(wall) }))
    .sort((a, b) => Number(a.ideals - b.ideals))
    .slice(0, 2),
);

describe('laws of the machine', () => {
  it.each(small)('accepts exactly the correct orders: $name', ({ sequence }) => {
    const counted = countOrders(sequence.order);
    expect(acceptedOrders(sequence)).toBe(counted.ok && counted.value.orders);
  });

  // The ready set at every state of a run is what makes its orders linear extensions: 5 orders a wall.
  it.each(walls)('along drawn orders it is ready for just what may come: $name', ({ sequence }) => {
    const machine = installMachine(sequence);
    for (const order of drawnOrders(sequence, 5)) {
      let state: AnyMachineSnapshot = initialTransition(machine)[0];
      const done = new Set<number>();
      for (const next of order) {
        expect(readyIn(sequence, state)).toEqual(readySteps(sequence, done));
        state = placed(machine, state, sequence.steps[next]!.id)!;
        done.add(next);
      }
      expect(readyIn(sequence, state)).toEqual([]);
      expect(state.status).toBe('done');
    }
  });

  it.each(walls)('so it is wherever it was left, however it came there: $name', ({ sequence }) => {
    const machine = installMachine(sequence);
    const random = randomFrom(`${sequence.method.id}/ideals`);
    const { order } = sequence;
    for (let drawn = 0; drawn < 8; drawn += 1) {
      // Whatever a few steps need is an ideal; each has orders that no draw of whole orders favours.
      const wanted = sequence.steps.flatMap((_, step) => (below(random, 4n) === 0n ? [step] : []));
      const done = new Set(wanted.flatMap((step) => [step, ...predecessors(order, step)]));
      const state = lineUp(order, shuffle(random, [...done])).reduce<AnyMachineSnapshot>(
        (reached, step) => placed(machine, reached, sequence.steps[step]!.id)!,
        initialTransition(machine)[0],
      );
      expect(readyIn(sequence, state)).toEqual(readySteps(sequence, done));
    }
  });
});
