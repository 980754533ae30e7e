import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { align, type AlignmentCosts, type Move } from '#engine/marking/align.ts';
import { fitness } from '#engine/marking/fitness.ts';
import { liftOut } from '#engine/marking/lift-out.ts';
import type { Model } from '#engine/marking/model.ts';
import { orderModel } from '#engine/marking/order-model.ts';
import { isCorrectOrder } from '#engine/method/partial-order.ts';
import { anyOrder, chain, everyOrder, orderOf } from '../method/orders.ts';
import { anyAttempt, crossedAttempt } from './attempts.ts';
import { card, choice, loop, parallel, processModel, sequence } from './process-model.ts';

const unit: AlignmentCosts = { sync: 0, model: 1, trace: 1, silent: 0 };

function aligned<State>(model: Model<State>, trace: readonly string[], costs = unit) {
  const alignment = align(model, trace, costs);
  if (!alignment.ok) throw new Error(alignment.error.code);
  return alignment.value;
}

function fitnessOf<State>(model: Model<State>, trace: readonly string[], costs = unit) {
  const found = fitness(model, trace, costs);
  if (!found.ok) throw new Error(found.error.code);
  return found.value;
}

describe('truth', () => {
  // The running example of W. van der Aalst, "Process Mining", as aligned in
  // https://github.com/pm4py/pm4py-core, notebooks/4_conformance_checking.ipynb: a request is registered,
  // examined while its ticket is checked, decided, perhaps begun again, and paid or rejected. The net
  // there passes a silent step before each examination and one after the last decision.
  const request = processModel(
    sequence(
      card('R'),
      loop(sequence(parallel(choice(card('EC'), card('ET')), card('CT')), card('D')), card('RR')),
      choice(card('PC'), card('RJ')),
    ),
  );
  const published: AlignmentCosts = { sync: 0, model: 10_000, trace: 10_000, silent: 1 };

  const cases = [
    ['ET CT D RJ', 10_002, 90_002, 0.8888888888888888],
    ['R CT EC PC', 10_002, 90_002, 0.8888888888888888],
    ['R CT D RR PC', 20_002, 100_002, 0.8],
    ['R CT ET D RJ', 2, 100_002, 1],
    ['R EC CT D again CT EC D EC CT D RJ', 30_004, 170_002, 0.8235294117647058],
    ['R CT something PC', 30_002, 90_002, 0.6666666666666667],
  ] as const;

  it.each(cases)('%s costs %i of %i', (cards, cost, worst, share) => {
    const trace = cards.split(' ');
    expect(fitnessOf(request, trace, published)).toMatchObject({ cost, worst });
    // The shares are published without the silent steps.
    expect(fitnessOf(request, trace).fitness).toBeCloseTo(share, 12);
  });

  it('the six cases together fit by 0.8437, and by 0.8447 on average', () => {
    const traces = cases.map(([cards]) => cards.split(' '));
    const priced = traces.map((trace) => fitnessOf(request, trace, published));
    const sum = (numbers: readonly number[]) => numbers.reduce((total, number) => total + number);
    const log = 1 - sum(priced.map(({ cost }) => cost)) / sum(priced.map(({ worst }) => worst));
    expect(log).toBeCloseTo(0.843731055042718, 12);
    const shares = traces.map((trace) => fitnessOf(request, trace).fitness);
    expect(sum(shares) / shares.length).toBeCloseTo(0.8446623093681916, 12);
  });

  it('R R EC CT RJ has a card too many and lacks one', () => {
    const trace = ['R', 'R', 'EC', 'CT', 'RJ'];
    const odd = aligned(request, trace).moves.filter(
      ({ kind }) => kind === 'trace' || kind === 'model',
    );
    expect(odd).toEqual([
      { kind: 'trace', label: 'R' },
      { kind: 'model', label: 'D' },
    ]);
    expect(fitnessOf(request, trace)).toEqual({ cost: 2, worst: 10, fitness: 0.8 });
  });

  it('a redo is walked as often as the trace asks for', () => {
    const round = ['EC', 'CT', 'D'];
    const trace = ['R', ...round, 'RR', ...round, 'RR', ...round, 'PC'];
    expect(aligned(request, trace)).toMatchObject({ cost: 0 });
  });

  // By hand; the walk of a, b and c, d through such a net is the example of
  // https://en.wikipedia.org/wiki/Token-based_replay
  it.each([
    ['abcd', 0, 8],
    ['acbd', 0, 8],
    ['abd', 1, 7],
    ['acd', 1, 7],
    ['ad', 2, 6],
    ['adbc', 2, 8],
    ['abbcd', 1, 9],
    ['bcd', 1, 7],
  ])('%s against a, b and c in either order, d costs %i of %i', (cards, cost, worst) => {
    const fork = sequence(card('a'), parallel(card('b'), card('c')), card('d'));
    const expected = { cost, worst, fitness: 1 - cost / worst };
    expect(fitnessOf(processModel(fork), [...cards])).toEqual(expected);
  });

  it('nothing against nothing fits', () => {
    expect(fitnessOf(orderModel(orderOf(chain(0))), [])).toEqual({ cost: 0, worst: 0, fitness: 1 });
  });

  it('a model that cannot finish, and one that is too large, are told apart', () => {
    const lost = { ...orderModel(orderOf(chain(3))), isFinal: () => false };
    expect(align(lost, ['0'], unit)).toEqual({ ok: false, error: { code: 'NEVER_FINISHES' } });
    expect(align(orderModel(orderOf(chain(9))), ['8'], unit, 10)).toEqual({
      ok: false,
      error: { code: 'TOO_MANY_STATES', limit: 10 },
    });
  });

  it('a cost below 0 or in halves is refused', () => {
    const model = orderModel(orderOf(chain(2)));
    expect(() => align(model, ['1'], { ...unit, model: -1 })).toThrow('not -1 for "0"');
    expect(() => align(model, ['1'], { ...unit, trace: () => 0.5 })).toThrow('not 0.5 for "1"');
  });
});

describe('laws', () => {
  const weighted = (weights: readonly number[], strange: number): AlignmentCosts => {
    const price = (label: string) => weights[Number(label)] ?? strange;
    return { ...unit, model: price, trace: price };
  };

  it('agrees with lifting out: twice what is lifted, once what is left out or strange', () => {
    const withStrange = fc.tuple(
      fc.oneof(anyAttempt(7), crossedAttempt),
      fc.array(fc.tuple(fc.nat(7), fc.constantFrom('torch', 'nail')), { maxLength: 3 }),
    );
    fc.assert(
      fc.property(withStrange, ([{ stated, attempt, weights }, strange]) => {
        const order = orderOf(stated);
        const { cost } = liftOut({ order, attempt, weights, stated: stated.pairs });
        const leftOut = weights.filter((_, step) => !attempt.includes(step));
        const trace = attempt.map(String);
        for (const [place, label] of strange) trace.splice(place, 0, label);
        const { cost: found } = aligned(orderModel(order), trace, weighted(weights, 5));
        const missing = leftOut.reduce((sum, weight) => sum + weight, 0);
        expect(found).toBe(2 * cost + missing + 5 * strange.length);
      }),
      { numRuns: 200 },
    );
  });

  const orderAndTrace = anyOrder(5).chain((stated) =>
    fc.record({
      stated: fc.constant(stated),
      trace: fc.array(fc.nat(5).map(String), { maxLength: 7 }),
      weights: fc.array(fc.nat(3), { minLength: stated.size, maxLength: stated.size }),
    }),
  );

  it('no run of the model is nearer to the trace, even with cards done again', () => {
    fc.assert(
      fc.property(orderAndTrace, ({ stated, trace, weights }) => {
        const costs = weighted(weights, 2);
        const distances = everyOrder(stated).map((run) =>
          editDistance(run.map(String), trace, costs),
        );
        expect(aligned(orderModel(orderOf(stated)), trace, costs).cost).toBe(
          Math.min(...distances),
        );
      }),
      { numRuns: 200 },
    );
  });

  it('the moves spell the trace and a run of the model, and their prices add up to the cost', () => {
    fc.assert(
      fc.property(orderAndTrace, ({ stated, trace, weights }) => {
        const costs = weighted(weights, 2);
        const order = orderOf(stated);
        const { moves, cost } = aligned(orderModel(order), trace, costs);
        expect(labels(moves, 'trace')).toEqual(trace);
        expect(isCorrectOrder(order, labels(moves, 'model').map(Number))).toBe(true);
        const odd = moves.filter(({ kind }) => kind === 'model' || kind === 'trace');
        const price = costs.model as (label: string) => number;
        const sum = odd.reduce((sum, move) => sum + ('label' in move ? price(move.label) : 0), 0);
        expect(sum).toBe(cost);
      }),
    );
  });
});

const labels = (moves: readonly Move[], side: 'model' | 'trace'): readonly string[] =>
  moves.flatMap((move) => (move.kind === side || move.kind === 'sync' ? [move.label] : []));

/** Least cost of dropping and adding labels to turn the one into the other. */
function editDistance(
  run: readonly string[],
  trace: readonly string[],
  { model, trace: extra }: AlignmentCosts,
): number {
  const price = model as (label: string) => number;
  const add = extra as (label: string) => number;
  let row = [0];
  for (const label of trace) row.push(row.at(-1)! + add(label));
  for (const step of run) {
    const next = [row[0]! + price(step)];
    trace.forEach((label, j) => {
      const ways = [row[j + 1]! + price(step), next[j]! + add(label)];
      next.push(Math.min(...ways, label === step ? row[j]! : Infinity));
    });
    row = next;
  }
  return row.at(-1)!;
}
