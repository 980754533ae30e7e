/**
 * What the competence board and the plan of a job ask of the records, for 100, 5,000 and 50,000 people in
 * crews of fifteen with two certificates each. A page, filtered or not, fails where it takes 3 times as long
 * or more with ten times the people; what goes over a whole company (coverage, a rare state, everybody who
 * might learn) is told and not held.
 *
 *   npm run bench -- board
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { addPeriod } from '#engine/calendar.ts';
import type { Scheme } from '#engine/exam/scheme.ts';
import * as board from '#server/board/board.ts';
import { attention } from '#server/board/attention.ts';
import { coverageOf, endings } from '#server/board/coverage-of.ts';
import { schemesNow } from '#server/board/qualifications.ts';
import { dayFrom } from '#server/board/records-of.ts';
import { type Db, openDatabase } from '#server/database/open-database.ts';
import type { Job } from '#server/jobs/jobs.ts';
import { planJob } from '#server/jobs/plan-job.ts';
import { certify } from './load/certify.ts';
import { at, company, crewOf, fill, idOf } from './load/fill.ts';

const sizes = [100, 5_000, 50_000];
const bound = 3;
const runs = 11;

const jobOf = (schemes: readonly Scheme[], count: number): Job => ({
  id: 'none',
  title: 'Bench',
  place: 'Bench',
  startsOn: '2030-06-01',
  endsOn: '2030-07-01',
  note: null,
  closedAt: null,
  roles: schemes.map(({ id }) => ({ id, title: id, count, needs: [id] })),
  travel: new Map([[crewOf(0), 5]]),
  sent: new Map(),
});

type Query = (db: Db, schemes: readonly Scheme[], people: number) => Promise<unknown>;
const page = (asked: (people: number) => board.Asked): Query => {
  return (db, schemes, people) => board.page(db, company, at, schemes, asked(people));
};
const middle = (people: number) => idOf('person', people >> 1);
const base = 'base-of-wall-installer';
const through = addPeriod(dayFrom(at), { count: 60, unit: 'days' });

const queries: Readonly<Record<string, Query>> = {
  'first page': page(() => ({})),
  'a page in the middle': page((people) => ({ after: middle(people) })),
  'a crew': page((people) => ({ crew: crewOf(people >> 1) })),
  'current in one qualification': page(() => ({ qualification: base, state: 'current' })),
};
const walks: typeof queries = {
  'those suspended': page(() => ({ qualification: base, state: 'suspended' })),
  'the soonest to end': page(() => ({ qualification: base, order: 'end' })),
  'somebody by name': page((people) => ({ search: `b-${people - 1}` })),
  'coverage of the year': (db, schemes) => coverageOf(db, company, at, schemes),
  'what waits for the office': (db, schemes) => attention(db, company, at, schemes),
  'who lapses in 60 days': (db) => endings(db, company, at, through, 50),
  'a job that can be filled': (db, schemes) =>
    planJob(db, company, at, schemes, jobOf(schemes.slice(0, 2), 8)),
  'a job that is short': (db, schemes) => planJob(db, company, at, schemes, jobOf(schemes, 2)),
};

async function median(run: () => Promise<unknown>): Promise<number> {
  const times: number[] = [];
  for (let at = 0; at < runs; at += 1) {
    const start = performance.now();
    await run();
    times.push(performance.now() - start);
  }
  return times.sort((a, b) => a - b)[runs >> 1]!;
}

const folder = mkdtempSync(join(tmpdir(), 'underlap-board-'));
try {
  const schemes = await schemesNow();
  const stores = [];
  for (const people of sizes) {
    const place = { folder: join(folder, String(people)) };
    await fill(place, { people, perPerson: 1 });
    certify(place.folder, people, schemes);
    stores.push({ people, ...openDatabase(place) });
  }
  for (const [name, query] of Object.entries({ ...queries, ...walks })) {
    const times: number[] = [];
    for (const { db, people } of stores) {
      times.push(await median(() => query(db, schemes, people)));
    }
    const last = times[2]! / times[1]!;
    const isHeld = name in queries;
    if (isHeld && last >= bound) process.exitCode = 1;
    console.log(
      `${!isHeld ? 'grows' : last < bound ? 'holds' : 'FAILS'}  ${name}: ` +
        `${times.map((time) => time.toFixed(1)).join(', ')} ms; ten times the people, ${last.toFixed(2)} times`,
    );
  }
  console.log(`load of the machine ${loadavg()[0]!.toFixed(1)}`);
  for (const { close } of stores) await close();
} finally {
  rmSync(folder, { recursive: true, force: true });
}
