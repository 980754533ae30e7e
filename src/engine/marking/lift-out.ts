/**
 * The least that has to be lifted out of an attempt, and put back, for it to be a correct order.
 *
 * Steps of the attempt can stand together just when no pair of them is inverted: their order in the
 * attempt then contradicts the partial order nowhere, even through steps in between, as the partial order
 * is transitive. So what stands is an antichain of the inverted pairs, the heaviest, and what is lifted
 * out is the rest. In practice between linear and cubic in the steps: 30 take 10 to 60 microseconds,
 * 200 take 0.2 to 9 milliseconds, from slightly wrong to backwards.
 */
import { lineUp } from '#engine/method/line-up.ts';
import type { Pair, PartialOrder } from '#engine/method/partial-order.ts';
import { heaviestAntichain } from './antichain.ts';
import { invertedPairs } from './inverted-pairs.ts';
import { nearestGaps, type Move } from './nearest-gaps.ts';

export type LiftOut = {
  /** In the order of the attempt. */
  readonly lifted: readonly Lifted[];
  /** What was placed and not lifted, in the order of the attempt. */
  readonly standing: readonly number[];
  /** Every step once: the standing ones as they are, the others at the nearest legal places. */
  readonly nearestOrder: readonly number[];
  /** What was lifted out weighs this together. */
  readonly cost: number;
};

export type Lifted = {
  readonly step: number;
  /** How many standing steps it passes on its way back, at least 1. */
  readonly places: number;
  /** Whether it was placed too early or too late. */
  readonly direction: 'early' | 'late';
  /**
   * The stated pairs with this step that the attempt inverts, or, where it breaks none directly, those
   * that follow from them.
   */
  readonly broken: readonly Pair[];
};

export function liftOut(given: {
  readonly order: PartialOrder;
  /** Steps in the order placed, none twice; some may be missing. */
  readonly attempt: readonly number[];
  /** Of each step: whole and above 0. */
  readonly weights: readonly number[];
  /** Pairs of the order that were stated, as against those that follow. */
  readonly stated: readonly Pair[];
}): LiftOut {
  const { order, attempt, weights, stated } = given;
  refuseWeights(order, weights);
  const places = placesIn(order, attempt);
  const wrong = invertedPairs(order, attempt);
  const standing = wrong.length === 0 ? attempt : heaviestAntichain(attempt, wrong, weights);
  const moves = nearestGaps(order, attempt, standing);
  const broken = wrong.length === 0 ? [] : brokenOf(stated, places);
  return {
    lifted: moves.map(({ step, from, to }) => ({
      step,
      places: Math.abs(to - from),
      direction: from < to ? 'early' : 'late',
      broken: firstWith(step, broken, wrong),
    })),
    standing,
    nearestOrder: lineUp(order, [...leftOut(order, attempt), ...inGaps(standing, moves)]),
    cost: moves.reduce((sum, { step }) => sum + weights[step]!, 0),
  };
}

/** The pairs with this step, from the first list that has any. */
function firstWith(step: number, ...lists: readonly (readonly Pair[])[]): readonly Pair[] {
  for (const pairs of lists) {
    const found = pairs.filter((pair) => pair[0] === step || pair[1] === step);
    if (found.length > 0) return found;
  }
  return [];
}

/** The stated pairs that the attempt inverts, each once however often it was stated. */
function brokenOf(stated: readonly Pair[], places: readonly number[]): readonly Pair[] {
  const broken: Pair[] = [];
  for (const pair of stated) {
    const [before, after] = pair;
    if (
      places[before]! > places[after]! &&
      !broken.some((b) => b[0] === before && b[1] === after)
    ) {
      broken.push(pair);
    }
  }
  return broken;
}

/** First in line, so that each stands as soon as it may. */
function leftOut(order: PartialOrder, attempt: readonly number[]): readonly number[] {
  if (attempt.length === order.size) return [];
  const placed = new Set(attempt);
  return [...order.before.keys()].filter((step) => !placed.has(step));
}

/** Lifted steps that share a gap stay as in the attempt, which the line-up then mends. */
function inGaps(standing: readonly number[], moves: readonly Move[]): readonly number[] {
  const steps: number[] = [];
  for (let gap = 0; gap <= standing.length; gap += 1) {
    for (const { step, to } of moves) if (to === gap) steps.push(step);
    if (gap < standing.length) steps.push(standing[gap]!);
  }
  return steps;
}

/** Neither before nor after any place, as all comparisons with it are false. */
const missing = NaN;

/** By step, its place in the attempt. */
function placesIn(order: PartialOrder, attempt: readonly number[]): readonly number[] {
  const places = Array<number>(order.size).fill(missing);
  attempt.forEach((step, place) => {
    const former = places[step];
    if (former === undefined) throw new RangeError(`${step} is no step below ${order.size}`);
    if (!Number.isNaN(former)) throw new RangeError(`step ${step} is placed twice`);
    places[step] = place;
  });
  return places;
}

function refuseWeights(order: PartialOrder, weights: readonly number[]): void {
  const bad = weights.find((weight) => !Number.isSafeInteger(weight) || weight <= 0);
  if (bad !== undefined) throw new RangeError(`a weight is whole and above 0, not ${bad}`);
  if (weights.length !== order.size) {
    throw new RangeError(`${order.size} steps need as many weights, not ${weights.length}`);
  }
}
