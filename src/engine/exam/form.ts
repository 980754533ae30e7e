/**
 * Draws the questions of one form by a seed, so that forms differ and none is harder than another.
 *
 * First each topic's questions are drawn at random, rarely seen ones more likely (`weightOf`). Then
 * single questions are exchanged for others of their topic wherever that brings mean and spread of the
 * difficulties nearer to what the whole bank has: a local search with random moves (for the family of
 * methods: W. J. van der Linden, "Linear Models for Optimal Test Design", 2005, ch. 1 and 4; from
 * memory). An exchange is proposed as often as the newcomer is likely, so that matching does not undo
 * the care for exposure. O(bank + questions x pool + `moves`).
 *
 * Enemies are kept apart by drawing again. Whether some form without enemies exists is as hard as
 * finding an independent set, so after `restarts` that is not claimed, only that none was found.
 */
import { fraction, randomFrom, shuffle, type Random } from '#engine/random.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { usualCap, type BankItem } from './bank.ts';
import { enemiesIn, getsOn, type Enemies } from './enemies.ts';
import type { FormFault, FormRequest } from './form-request.ts';
import { exchange, isNear } from './match-difficulty.ts';
import { poolsOf, targetOf, type Pool } from './pools.ts';
import { spreadOf, type Spread } from './spread.ts';

export type Form<I extends BankItem> = {
  /** In the order in which they are asked. */
  readonly items: readonly I[];
  readonly difficulty: Spread;
  readonly target: Spread;
  /** Whether it came as near to the target as is asked for. */
  readonly isMatched: boolean;
};

const restarts = 50;

export function drawForm<I extends BankItem>(
  request: FormRequest<I>,
): Result<Form<I>, readonly FormFault[]> {
  const { cap = usualCap, blueprint } = request;
  if (!(cap > 0 && cap <= 1)) throw new RangeError(`A cap is above 0 and at most 1, not ${cap}.`);
  // A seed means the same form in whatever order the bank was read.
  const bank = request.bank.toSorted((a, b) => (a.id < b.id ? -1 : 1));
  const pools = poolsOf({ ...request, bank }, cap);
  if (!pools.ok) return pools;
  const random = randomFrom(`${request.seed}/form`);
  const enemies = enemiesIn(bank);
  const drawn = drawnFrom(random, pools.value, enemies);
  if (!drawn) return fault([{ code: 'ENEMIES' }]);
  const target = targetOf(bank, blueprint);
  const matched = exchange(random, pools.value, drawn, enemies, target);
  const difficulty = spreadOf(matched.map(({ difficulty: each }) => each));
  return ok({
    items: shuffle(random, matched),
    difficulty,
    target,
    isMatched: isNear(difficulty, target),
  });
}

/** Topic after topic, in the order of the pools; nothing where enemies fill every draw. */
function drawnFrom<I extends BankItem>(
  random: Random,
  pools: readonly Pool<I>[],
  enemies: Enemies,
): I[] | undefined {
  for (let start = 0; start < restarts; start += 1) {
    const form: I[] = [];
    const order = start === 0 ? pools : shuffle(random, pools);
    if (order.every((pool) => addFrom(random, pool, enemies, form))) {
      // The exchanges know a question's topic by its place.
      return pools.flatMap(({ topic }) => form.filter((item) => item.topic === topic));
    }
  }
  return undefined;
}

function addFrom<I extends BankItem>(
  random: Random,
  pool: Pool<I>,
  enemies: Enemies,
  form: I[],
): boolean {
  const weights = [...pool.weights];
  for (let left = pool.count; left > 0; left -= 1) {
    if (enemies.size > 0) {
      pool.items.forEach(({ id }, place) => {
        if (weights[place] !== 0 && !getsOn(enemies, id, form)) weights[place] = 0;
      });
    }
    const place = weightedPlace(random, weights);
    if (place === undefined) return false;
    weights[place] = 0;
    form.push(pool.items[place]!);
  }
  return true;
}

/** A place with a chance in proportion to its weight; nothing where all are 0. */
function weightedPlace(random: Random, weights: readonly number[]): number | undefined {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  if (total === 0) return undefined;
  let left = fraction(random) * total;
  let last: number | undefined;
  for (const [place, weight] of weights.entries()) {
    if (weight === 0) continue;
    last = place;
    left -= weight;
    if (left < 0) return place;
  }
  return last;
}
