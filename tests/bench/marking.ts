/**
 * How long marking takes: a sequence's own way against the general aligner on the same attempts, and how
 * it grows with the number of steps. Fails when a bound that marking promises is broken.
 */
import { align } from '#engine/marking/align.ts';
import { liftOut } from '#engine/marking/lift-out.ts';
import { orderModel } from '#engine/marking/order-model.ts';
import { partialOrder, type Pair, type PartialOrder } from '#engine/method/partial-order.ts';
import { lineUp } from '#engine/method/line-up.ts';
import { randomFrom, shuffle, whole, type Random } from '#engine/random.ts';

type Case = Parameters<typeof liftOut>[0];

/** Each step with so many constraints, each on one of the ten steps before it. */
function anyOrder(random: Random, size: number, each: number) {
  const steps = [...Array(size).keys()];
  const stated = steps
    .slice(1)
    .flatMap((after): readonly Pair[] =>
      Array.from({ length: each }, () => [
        whole(random, Math.max(0, after - 10), after - 1),
        after,
      ]),
    );
  const order = partialOrder(size, stated);
  if (!order.ok) throw new Error(order.error.code);
  return { order: order.value, stated };
}

/** What people hand in: a correct order in which a few cards were put elsewhere. */
function slightlyWrong(random: Random, order: PartialOrder): readonly number[] {
  const cards = [...lineUp(order, shuffle(random, [...order.before.keys()]))];
  for (let moves = 0; moves < 3; moves += 1) {
    const [card] = cards.splice(whole(random, 0, cards.length - 1), 1);
    cards.splice(whole(random, 0, cards.length), 0, card!);
  }
  return cards;
}

const anyhow = (random: Random, order: PartialOrder): readonly number[] =>
  shuffle(random, [...order.before.keys()]);

const backwards = (_: Random, order: PartialOrder): readonly number[] =>
  lineUp(order, [...order.before.keys()]).toReversed();

function casesOf(
  size: number,
  each: number,
  attemptOf: typeof anyhow,
  count: number,
): readonly Case[] {
  const random = randomFrom(`${size}/${each}`);
  return Array.from({ length: count }, () => {
    const { order, stated } = anyOrder(random, size, each);
    const weights = Array.from({ length: size }, () => [1, 3, 9][whole(random, 0, 2)]!);
    return { order, stated, weights, attempt: attemptOf(random, order) };
  });
}

/**
 * Milliseconds a case: the best of several samples of each, as other work on the machine only ever adds.
 * A sample takes about as long whatever is measured, so that what is slow is not disturbed more often.
 */
function time(cases: readonly Case[], mark: (one: Case) => unknown): number {
  const sample = (one: Case, times: number): number => {
    const start = performance.now();
    for (let i = 0; i < times; i += 1) mark(one);
    return (performance.now() - start) / times;
  };
  for (const one of cases) sample(one, 20);
  const bests = cases.map((one) => {
    const times = Math.max(1, Math.round(0.3 / sample(one, 3)));
    return Math.min(...Array.from({ length: 10 }, () => sample(one, times)));
  });
  return bests.reduce((sum, best) => sum + best) / cases.length;
}

function alignInstead({ order, attempt, weights }: Case): number {
  const price = (label: string): number => weights[Number(label)]!;
  const costs = { sync: 0, model: price, trace: price, silent: 0 };
  const alignment = align(orderModel(order), attempt.map(String), costs);
  if (!alignment.ok) throw new Error(alignment.error.code);
  return alignment.value.cost;
}

const micro = (milliseconds: number): string => `${(milliseconds * 1000).toFixed(1)} us`;

function hold(claim: string, holds: boolean): void {
  console.log(`${holds ? 'holds' : 'FAILS'}  ${claim}`);
  if (!holds) process.exitCode = 1;
}

const kinds = { 'slightly wrong': slightlyWrong, shuffled: anyhow, backwards };

console.log('12 steps: lifting out, against the general aligner');
let ownTotal = 0;
let generalTotal = 0;
for (const each of [1, 2, 3]) {
  for (const [kind, attemptOf] of Object.entries(kinds)) {
    const cases = casesOf(12, each, attemptOf, 40);
    for (const one of cases) {
      if (2 * liftOut(one).cost !== alignInstead(one)) throw new Error('the two ways disagree');
    }
    const own = time(cases, liftOut);
    const general = time(cases, alignInstead);
    ownTotal += own;
    generalTotal += general;
    const figures = `${micro(own)} against ${micro(general)}, ${(general / own).toFixed(0)} times`;
    console.log(`  ${each} constraints a step, ${kind}: ${figures}`);
  }
}
const ratio = generalTotal / ownTotal;
hold(`all of these together: ${ratio.toFixed(0)} times faster (at least 50)`, ratio >= 50);

console.log('Lifting out as steps grow in number, 3 constraints a step');
for (const [kind, attemptOf] of Object.entries(kinds)) {
  const cost = new Map(
    [10, 30, 50, 100, 200].map((size) => {
      const cases = casesOf(size, 3, attemptOf, 8);
      return [size, time(cases, liftOut)];
    }),
  );
  const figures = [...cost].map(([size, spent]) => `${size} in ${micro(spent)}`);
  console.log(`  ${kind}: ${figures.join(', ')}`);
  const power = Math.log(cost.get(200)! / cost.get(10)!) / Math.log(20);
  hold(`${kind}, 10 to 200 steps: as the power ${power.toFixed(2)} (at most 3)`, power <= 3);
  hold(`${kind}, 30 steps: under 1 ms`, cost.get(30)! < 1);
}
