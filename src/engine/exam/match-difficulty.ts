/**
 * Exchanges single questions of a form for others of their topic, wherever that brings mean and spread of
 * the difficulties nearer to the target: a local search with random moves, O(`moves`). A newcomer is
 * proposed as often as its weight says, so that matching does not undo the care for exposure.
 */
import { fraction, whole, type Random } from '#engine/random.ts';
import type { BankItem } from './bank.ts';
import { getsOn, type Enemies } from './enemies.ts';
import type { Pool } from './pools.ts';
import { square, type Spread } from './spread.ts';

const moves = 4000;

/** How near is near enough, in standard deviations of the target. */
const nearMean = 0.01;
const nearSpread = 0.05;

/** `drawn` stands topic after topic, in the order of the pools, and so does what comes of it. */
export function exchange<I extends BankItem>(
  random: Random,
  pools: readonly Pool<I>[],
  drawn: readonly I[],
  enemies: Enemies,
  target: Spread,
): readonly I[] {
  const form = [...drawn];
  if (form.length === 0) return form;
  const poolAt = pools.flatMap((pool) => Array<Pool<I>>(pool.count).fill(pool));
  const on = new Set(form.map(({ id }) => id));
  let sums = sumsOf(form);
  for (let move = 0; move < moves; move += 1) {
    if (isNear(spreadFrom(sums, form.length), target)) break;
    const place = whole(random, 0, form.length - 1);
    const pool = poolAt[place]!;
    const other = whole(random, 0, pool.items.length - 1);
    const likely = pool.weights[other]! / pool.heaviest;
    if (likely < 1 && fraction(random) >= likely) continue;
    const [out, into] = [form[place]!, pool.items[other]!];
    if (on.has(into.id)) continue;
    const then = exchanged(sums, out.difficulty, into.difficulty);
    const isNearer =
      distance(spreadFrom(then, form.length), target) <
      distance(spreadFrom(sums, form.length), target);
    if (!isNearer || !getsOn(enemies, into.id, form, out)) continue;
    form[place] = into;
    on.delete(out.id);
    on.add(into.id);
    sums = then;
  }
  return form;
}

type Sums = { readonly values: number; readonly squares: number };

const sumsOf = (form: readonly BankItem[]): Sums => ({
  values: form.reduce((sum, { difficulty }) => sum + difficulty, 0),
  squares: form.reduce((sum, { difficulty }) => sum + square(difficulty), 0),
});

const exchanged = ({ values, squares }: Sums, out: number, into: number): Sums => ({
  values: values - out + into,
  squares: squares - square(out) + square(into),
});

function spreadFrom({ values, squares }: Sums, count: number): Spread {
  const mean = values / count;
  return { mean, spread: Math.sqrt(Math.max(0, squares / count - square(mean))) };
}

const unit = ({ spread }: Spread): number => (spread > 0 ? spread : 1);

const distance = (found: Spread, target: Spread): number =>
  square(found.mean - target.mean) + square(found.spread - target.spread);

export const isNear = (found: Spread, target: Spread): boolean =>
  Math.abs(found.mean - target.mean) <= nearMean * unit(target) &&
  Math.abs(found.spread - target.spread) <= nearSpread * unit(target);
