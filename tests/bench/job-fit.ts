/**
 * Whom to send, for 500 people and 40 roles, against a tenth of the people and against a quarter of the
 * roles: milliseconds, and how they grow. A job that can be filled and one that cannot are both timed, the
 * second with the cheapest training that fills it. Fails where either takes 100 ms or more, in the best of
 * three medians, as other work on the machine only ever slows.
 *
 *   npm run bench -- job-fit
 */
import type { Candidate, Role } from '#engine/job-fit/job.ts';
import { jobFit } from '#engine/job-fit/job-fit.ts';
import { fraction, randomFrom, type Random, whole } from '#engine/random.ts';

const qualifications = Array.from({ length: 12 }, (_, at) => `q${at}`);

function caseOf(people: number, roles: number, share: number, random: Random) {
  const chance = () => fraction(random);
  const candidates: Candidate[] = Array.from({ length: people }, (_, at) => {
    const holds = new Set(qualifications.filter(() => chance() < share));
    const partsLeft = new Map(qualifications.map((one) => [one, whole(random, 1, 5)]));
    return { id: `p${at}`, holds, travel: whole(random, 0, 199), partsLeft };
  });
  const asked: Role[] = Array.from({ length: roles }, (_, at) => ({
    id: `r${at}`,
    count: whole(random, 1, 4),
    needs: qualifications.filter((one) => one === `q${at % 12}` || chance() < 0.08),
  }));
  return { candidates, asked };
}

function median(people: number, roles: number, share: number): number {
  const { candidates, asked } = caseOf(people, roles, share, randomFrom(7));
  const times = Array.from({ length: 15 }, () => {
    const start = performance.now();
    jobFit(asked, candidates);
    return performance.now() - start;
  });
  return times.sort((a, b) => a - b)[times.length >> 1]!;
}

/** Milliseconds that the office waits for 500 people and 40 roles. */
const bound = 100;
const best = (people: number, roles: number, share: number): number =>
  Math.min(...Array.from({ length: 3 }, () => median(people, roles, share)));

for (const [name, share] of [
  ['can be filled', 0.5],
  ['is short', 0.06],
] as const) {
  median(500, 40, share);
  const [few, quarter, all] = [median(50, 40, share), median(500, 10, share), best(500, 40, share)];
  const holds = all < bound;
  if (!holds) process.exitCode = 1;
  console.log(
    `${holds ? 'holds' : 'FAILS'}  a job that ${name}, 500 people x 40 roles: ${all.toFixed(1)} ms; ` +
      `${(all / few).toFixed(1)} times 50 people, ${(all / quarter).toFixed(1)} times 10 roles`,
  );
}
