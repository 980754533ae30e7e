/**
 * How long the curves of questions take to estimate, a slope for each, and how that grows with the
 * persons: the time of the processor, of which other programs take none away. Fails above 1 s for 1,000
 * persons with 40 questions, above 60 s for 100,000 with 60, and where ten times the persons take more
 * than 12 times as long. Also, without bounds: answers of which each person lacks a third, so that
 * hardly two were asked the same.
 */
import { randomFrom, whole } from '#engine/random.ts';
import { fitItems } from '#engine/statistics/fit-items.ts';
import { absent, type Responses } from '#engine/statistics/responses.ts';
import { drawAbilities, simulateResponses } from '#engine/statistics/simulate-responses.ts';
import { plausibleCurves } from '../engine/statistics/recovery.ts';

function made(persons: number, items: number): Responses {
  const random = randomFrom(`bench/${persons}/${items}`);
  return simulateResponses(random, plausibleCurves(items), drawAbilities(random, persons));
}

function thinned(responses: Responses): Responses {
  const random = randomFrom('bench/absent');
  const scores = responses.scores.map((score) => (whole(random, 0, 2) === 0 ? absent : score));
  return { ...responses, scores };
}

/** Seconds, of all threads, in the best of some runs. */
function timed(responses: Responses, runs: number): number {
  const times = Array.from({ length: runs }, () => {
    const start = process.cpuUsage();
    const fit = fitItems(responses, 'slope-each');
    const { user, system } = process.cpuUsage(start);
    if (!fit.ok || fit.value.outcome !== 'converged') throw new Error('A fit did not converge.');
    return (user + system) / 1e6;
  });
  return Math.min(...times);
}

function hold(claim: string, holds: boolean): void {
  console.log(`${holds ? 'holds' : 'FAILS'}  ${claim}`);
  if (!holds) process.exitCode = 1;
}

const cold = timed(made(1_000, 40), 1);
const small = timed(made(1_000, 40), 5);
hold(`1,000 x 40: ${small.toFixed(3)} s (the first time, cold, ${cold.toFixed(3)} s)`, cold < 1);

const sizes = [1_000, 10_000, 100_000];
const times = sizes.map((persons, at) => timed(made(persons, 60), [5, 3, 2][at]!));
for (const [at, time] of times.entries())
  console.log(`       ${sizes[at]} x 60: ${time.toFixed(2)} s`);
hold(`100,000 x 60 under 60 s`, times[2]! < 60);
for (const [at, time] of times.slice(1).entries()) {
  const ratio = time / times[at]!;
  hold(`${sizes[at]} to ${sizes[at + 1]} persons: ${ratio.toFixed(1)} times as long`, ratio < 12);
}

for (const persons of [1_000, 10_000]) {
  const time = timed(thinned(made(persons, 40)), 1);
  console.log(`       ${persons} x 40, a third absent: ${time.toFixed(2)} s`);
}
