/**
 * How a trace is best explained by a model: the cheapest way to walk both from start to end together,
 * one move of either or of both at a time (A. Adriansyah, "Aligning observed and modeled behavior",
 * Eindhoven 2014). Shortest path by E. W. Dijkstra over trace places x model states, only as far as
 * needed: O(n log n) in the pairs reached, which may be as many as the model's states times the trace's
 * length. Costs are whole numbers, so sums are exact; the same input gives the same alignment.
 */
import { fault, ok, type Result } from '#engine/result.ts';
import { Heap } from './heap.ts';
import type { Model, ModelMove } from './model.ts';

export type Move =
  | { readonly kind: 'sync'; readonly label: string }
  /** The model moves alone: a card is missing from the trace. */
  | { readonly kind: 'model'; readonly label: string }
  | { readonly kind: 'silent' }
  /** The trace moves alone: it has a card too many. */
  | { readonly kind: 'trace'; readonly label: string };

/** Whole and at least 0, the same for every label or by label. */
export type Price = number | ((label: string) => number);

export type AlignmentCosts = {
  readonly sync: Price;
  readonly model: Price;
  readonly trace: Price;
  readonly silent: number;
};

export type Alignment = { readonly moves: readonly Move[]; readonly cost: number };

export type AlignFault =
  | { readonly code: 'NEVER_FINISHES' }
  | { readonly code: 'TOO_MANY_STATES'; readonly limit: number };

/** A state of the model after so many cards of the trace, and how it was reached. */
type Spot<State> = {
  readonly place: Place<State>;
  readonly card: number;
  readonly cost: number;
  readonly move: Move | undefined;
  readonly from: Spot<State> | undefined;
};

type Place<State> = {
  readonly state: State;
  /** Least cost found yet to be here, by number of cards. */
  readonly costs: number[];
  moves: readonly ModelMove<Place<State>>[] | undefined;
};

/** `limit` is the most pairs of state and number of cards to look at. */
export function align<State>(
  model: Model<State>,
  trace: readonly string[],
  costs: AlignmentCosts,
  limit = 1_000_000,
): Result<Alignment, AlignFault> {
  const { placeOf, movesFrom } = explorerOf(model);
  const open = new Heap<Spot<State>>(isSooner);
  const reach = (
    place: Place<State>,
    card: number,
    price: number,
    move?: Move,
    from?: Spot<State>,
  ): void => {
    const cost = (from?.cost ?? 0) + price;
    if (cost >= (place.costs[card] ?? Infinity)) return;
    place.costs[card] = cost;
    open.push({ place, card, cost, move, from });
  };

  let looked = 0;
  reach(placeOf(model.initial), 0, 0);
  for (let spot = open.pop(); spot; spot = open.pop()) {
    const { place, card, cost } = spot;
    if (cost > place.costs[card]!) continue;
    if (card === trace.length && model.isFinal(place.state)) {
      return ok({ moves: movesTo(spot), cost });
    }
    looked += 1;
    if (looked > limit) return fault({ code: 'TOO_MANY_STATES', limit });
    const next = trace[card];
    for (const { label, next: to } of movesFrom(place)) {
      if (label === null) {
        reach(to, card, priceOf(costs.silent, ''), { kind: 'silent' }, spot);
        continue;
      }
      reach(to, card, priceOf(costs.model, label), { kind: 'model', label }, spot);
      if (label !== next) continue;
      reach(to, card + 1, priceOf(costs.sync, label), { kind: 'sync', label }, spot);
    }
    if (next === undefined) continue;
    reach(place, card + 1, priceOf(costs.trace, next), { kind: 'trace', label: next }, spot);
  }
  return fault({ code: 'NEVER_FINISHES' });
}

/** Of spots as cheap, the one farther along the trace: it is likelier to be near the end. */
const isSooner = <State>(a: Spot<State>, b: Spot<State>): boolean =>
  a.cost < b.cost || (a.cost === b.cost && a.card > b.card);

/** Asks the model once for each state, however many cards it is met with. */
function explorerOf<State>(model: Model<State>) {
  const places = new Map<string, Place<State>>();
  const placeOf = (state: State): Place<State> => {
    const key = model.key(state);
    let place = places.get(key);
    if (!place) {
      place = { state, costs: [], moves: undefined };
      places.set(key, place);
    }
    return place;
  };
  const movesFrom = (place: Place<State>) =>
    (place.moves ??= model
      .moves(place.state)
      .map(({ label, next }) => ({ label, next: placeOf(next) })));
  return { placeOf, movesFrom };
}

function movesTo<State>(end: Spot<State>): readonly Move[] {
  const moves: Move[] = [];
  for (let spot: Spot<State> | undefined = end; spot; spot = spot.from) {
    if (spot.move) moves.push(spot.move);
  }
  return moves.reverse();
}

export function priceOf(price: Price, label: string): number {
  const cost = typeof price === 'number' ? price : price(label);
  if (!Number.isSafeInteger(cost) || cost < 0) {
    throw new RangeError(`a cost is whole and at least 0, not ${cost} for "${label}"`);
  }
  return cost;
}
