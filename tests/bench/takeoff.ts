/**
 * How long computed problems take: making ten thousand of any family, judging an answer, and what exact
 * arithmetic costs beside floats that walk the same formulas. Fails when a bound is broken.
 */
import { rationalFrom } from '#engine/takeoff/exact.ts';
import type { Term } from '#engine/takeoff/formula.ts';
import { instanceOf, type Instance } from '#engine/takeoff/instance.ts';
import { judgeAnswer } from '#engine/takeoff/marks.ts';
import { writeAnswer } from '#engine/takeoff/problem.ts';
import { readAnswer } from '#engine/takeoff/read-answer.ts';
import { answerOf, workOut, type Slate } from '#engine/takeoff/slate.ts';
import { slateOf, takeoffOf, type Takeoff } from '#engine/takeoff/takeoff.ts';
import { approximate } from '#engine/measure/rational.ts';
import { openContent } from '#server/content.ts';

const content = openContent();

const takeoffs: readonly Takeoff[] = [...content.takeoffs.values()].map((family) => {
  const found = takeoffOf(family, content.dataSheets.get(family.dataSheet)!);
  if (!found.ok) throw new Error(found.error.message);
  return found.value;
});

function make(takeoff: Takeoff, seed: number): Instance {
  const found = instanceOf(takeoff, seed);
  if (!found.ok) throw new Error(`${takeoff.family.id}: ${found.error.rejection.kind}`);
  return found.value;
}

/** The best of some rounds, in milliseconds a round: other programs disturb it least. */
function best(rounds: number, run: () => void): number {
  let least = Infinity;
  for (let round = 0; round < rounds; round += 1) {
    const start = performance.now();
    run();
    least = Math.min(least, performance.now() - start);
  }
  return least;
}

function hold(claim: string, holds: boolean): void {
  console.log(`${holds ? 'holds' : 'FAILS'}  ${claim}`);
  if (!holds) process.exitCode = 1;
}

const batch = 500;
const times = takeoffs.map((takeoff) => {
  for (let seed = 0; seed < batch; seed += 1) make(takeoff, seed);
  const ms = best(24, () => {
    for (let seed = 0; seed < batch; seed += 1) make(takeoff, seed);
  });
  return { id: takeoff.family.id, micros: (ms / batch) * 1000 };
});
for (const { id, micros } of times) console.log(`       ${id.padEnd(22)} ${micros.toFixed(1)} us`);
const slowest = times.reduce((a, b) => (b.micros > a.micros ? b : a));
hold(
  `10,000 problems of any family: ${((slowest.micros * 10_000) / 1e6).toFixed(2)} s at most ` +
    `(${slowest.id}), under 1 s`,
  slowest.micros < 100,
);

/** Every answer that is known, after right earlier ones and after wrong ones that must be followed through. */
const answers = takeoffs.flatMap((takeoff) => {
  const instance = make(takeoff, 1);
  const wrong = instance.parts.flatMap(({ part, slips: [slip] }) =>
    slip ? [[part.id, slip.answer] as const] : [],
  );
  return instance.parts.flatMap(({ part, right, slips }, place) =>
    [right, ...slips.map(({ answer }) => answer)].flatMap((answer) =>
      [new Map(), new Map(wrong.slice(0, place))].map((earlier) => ({
        instance,
        part,
        text: writeAnswer(part.answer, answer, 'en'),
        earlier,
      })),
    ),
  );
});
const checks = answers.map(({ instance, part, text, earlier }) => {
  const ms = best(20, () => {
    for (let run = 0; run < 10; run += 1) {
      const read = readAnswer(part, text);
      if (!read.ok) throw new Error(`${part.id}: ${text}`);
      judgeAnswer(instance, part.id, read.value, earlier);
    }
  });
  return { what: `${instance.takeoff.family.id}/${part.id}`, earlier, micros: (ms / 10) * 1000 };
});
const mean = checks.reduce((sum, { micros }) => sum + micros, 0) / checks.length;
const longest = checks.reduce((a, b) => (b.micros > a.micros ? b : a));
hold(
  `reading and judging an answer: ${mean.toFixed(1)} us, at most ${longest.micros.toFixed(1)} us ` +
    `(${longest.what}, after ${longest.earlier.size} wrong ones), under 1 ms`,
  longest.micros < 1000,
);

/** The same walk over the same terms, in floats: what a calculator without fractions would do. */
function float(term: Term, values: (number | undefined)[], slate: Slate): number {
  const known = values[term.place];
  if (known !== undefined) return known;
  const value = floatOf(term, values, slate);
  values[term.place] = value;
  return value;
}

function floatOf(term: Term, values: (number | undefined)[], slate: Slate): number {
  if (!('args' in term)) {
    if (term.op !== 'part') throw new Error(`${term.op} is known beforehand.`);
    const part = slate.definitions.parts.get(term.name)!;
    const exact = float(part.formula.root, values, slate);
    const round = part.answer.kind === 'quantity' ? part.answer.round?.how : undefined;
    return round === 'up' ? Math.ceil(exact) : round === 'down' ? Math.floor(exact) : exact;
  }
  const at = (place: number): number => float(term.args[place]!, values, slate);
  switch (term.op) {
    case 'add':
      return at(0) + at(1);
    case 'subtract':
      return at(0) - at(1);
    case 'multiply':
      return at(0) * at(1);
    case 'divide':
      return at(0) / at(1);
    case 'power':
      return at(0) ** at(1);
    case 'negate':
      return -at(0);
    case 'ceil':
      return Math.ceil(at(0));
    case 'floor':
      return Math.floor(at(0));
    case 'round':
      return Math.round(at(0));
    case 'min':
      return Math.min(...term.args.map((_, place) => at(place)));
    case 'max':
      return Math.max(...term.args.map((_, place) => at(place)));
    case 'if':
      return at(0) !== 0 ? at(1) : at(2);
    case 'not':
      return at(0) === 0 ? 1 : 0;
    case 'and':
      return at(0) !== 0 && at(1) !== 0 ? 1 : 0;
    case 'or':
      return at(0) !== 0 || at(1) !== 0 ? 1 : 0;
    default:
      return at(0) < at(1) ? 1 : 0;
  }
}

function asFloat(value: Slate['values'][number]): number | undefined {
  if (value === undefined) return undefined;
  return typeof value === 'boolean' ? Number(value) : approximate(rationalFrom(value));
}

const ratios = takeoffs.map((takeoff) => {
  const { givens, slate } = make(takeoff, 1);
  const { family } = takeoff;
  const start = slateOf(takeoff).values;
  for (const { id, term } of family.givens)
    if (givens.has(id)) start[term.place] = slate.values[term.place];
  const floats = start.map(asFloat);
  const roots = family.parts.flatMap((part) => part.slips.map(({ formula }) => formula.root));
  const exactly = best(40, () => {
    for (let run = 0; run < 200; run += 1) {
      const fresh: Slate = {
        definitions: takeoff.definitions,
        values: start.slice(),
        hangs: false,
      };
      for (const part of family.parts) answerOf(part, fresh);
      for (const root of roots) workOut(root, fresh);
    }
  });
  const roughly = best(40, () => {
    for (let run = 0; run < 200; run += 1) {
      const fresh = floats.slice();
      for (const part of family.parts) float(part.formula.root, fresh, slate);
      for (const root of roots) float(root, fresh, slate);
    }
  });
  return { id: family.id, ratio: exactly / roughly };
});
const sorted = ratios.toSorted((a, b) => a.ratio - b.ratio);
const middle = sorted[Math.floor(sorted.length / 2)]!;
const worst = sorted.at(-1)!;
console.log(
  `       exact beside floats on the same formulas: ${middle.ratio.toFixed(1)} times as long ` +
    `in the middle, ${worst.ratio.toFixed(1)} times at worst (${worst.id})`,
);
