/**
 * What the pages of a crew and of a trainer ask of the records, as a company grows tenfold and tenfold
 * again: each of the crews stays as large, so a page shows as much. Fails where a query takes 1.5 times as
 * long, or more, with ten times the records. All sizes are asked in turn and the best median of several
 * counts, as other work on the machine only ever slows. The rows are made up and written as fast as
 * SQLite can; "full" writes 100,000 people with 10,000,000 attempts, some gigabytes, for minutes.
 *
 *   npm run bench -- growth
 *   npm run bench -- growth full
 *   npm run bench -- growth full FOLDER    keeps what was written there for the next time
 */
import { existsSync, mkdtempSync, rmSync, statSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import * as assignmentList from '#server/assignments/assignment-list.ts';
import { due } from '#server/assignments/due.ts';
import * as thoseGiven from '#server/assignments/those-given.ts';
import * as decisions from '#server/attempts/decisions.ts';
import * as keptAttempts from '#server/attempts/kept-attempts.ts';
import { openContent } from '#server/content.ts';
import { type Db, openDatabase, sqliteFile } from '#server/database/open-database.ts';
import { ownSittings } from '#server/exams/own-sitting.ts';
import { crewInsight } from '#server/insight/crew-insight.ts';
import { crewStandings } from '#server/insight/crew-standings.ts';
import type { Member } from '#server/people/member.ts';
import * as crewList from '#server/people/crew-list.ts';
import * as roll from '#server/people/roll.ts';
import { at, company, crewOf, fill, idOf, newestOf, type Size, workOf } from './load/fill.ts';

const [, , extent, kept] = process.argv;
const isFull = extent === 'full';
const perPerson = isFull ? 100 : 20;
const sizes: readonly Size[] = (isFull ? [1_000, 10_000, 100_000] : [200, 2_000, 20_000]).map(
  (people) => ({ people, perPerson }),
);
const bound = 1.5;
const [rounds, runs] = [7, 30];

/** Of a crew or person by a number below that of people. */
type Query = (db: Db, one: number) => Promise<unknown>;

const member = (one: number): Member => ({
  company,
  companyName: 'Filled',
  isDemo: false,
  person: idOf('person', one),
  name: 'Trainer',
  crew: crewOf(one),
  roles: ['trainer'],
});
const given = async (db: Db, one: number) => {
  const found = await assignmentList.one(db, company, newestOf(one));
  if (!found) throw new Error(`Nothing was given to the crew of ${one}.`);
  return found;
};

const content = openContent();

/** Crews on a page: so few that the smallest company fills it. */
const most = 10;

/** All that the load function of the page asks for, for a trainer. */
async function companyPage(db: Db, one: number): Promise<void> {
  await crewList.page(db, company, { most });
  await assignmentList.list(db, company, { when: 'current', at });
  await due(db, member(one), at);
  await ownSittings(db, member(one));
}

async function crewsPage(db: Db): Promise<void> {
  await crewList.page(db, company, { most });
  await crewList.page(db, company, { which: 'closed', most });
  await crewList.choices(db, company, [], most);
}

/** What is shown on the pages, a name each. */
const queries: Readonly<Record<string, Query>> = {
  'people, first page': (db) => roll.page(db, company, {}),
  'people, a page in the middle': (db, one) =>
    roll.page(db, company, { after: idOf('person', one) }),
  'people of a crew': (db, one) => roll.page(db, company, { crew: crewOf(one) }),
  'crews, first page': (db) => crewList.page(db, company, { most }),
  'crews, a page in the middle': (db, one) =>
    crewList.page(db, company, { after: crewOf(one), most }),
  'crews that are closed': (db) => crewList.page(db, company, { which: 'closed', most }),
  'crews to choose from': (db, one) => crewList.choices(db, company, [crewOf(one)], most),
  'where a crew goes wrong': (db, one) => crewInsight(db, content, company, { crew: crewOf(one) }),
  'the page of the company, as a trainer': (db, one) => companyPage(db, one),
  'the page of the crews': (db) => crewsPage(db),
  'standings of a crew': (db, one) => crewStandings(db, company, crewOf(one)),
  'assignments, first page': (db) => assignmentList.list(db, company, { when: 'current', at }),
  'an assignment': (db, one) => given(db, one),
  'how those given it stand': async (db, one) =>
    thoseGiven.page(db, company, await given(db, one), { at }),
  'how many are in each state': async (db, one) =>
    thoseGiven.counts(db, company, await given(db, one), at),
  'what is due to somebody': (db, one) => due(db, member(one), at),
  'attempts of somebody for a work': (db, one) =>
    keptAttempts.forWorks(db, company, { person: idOf('person', one), works: [workOf(one)] }),
  'what was said to somebody': (db, one) => decisions.latestSaid(db, member(one), 20),
};

/** Told and not held: these go past what does not belong on the page, as all that is under way. */
const walks: typeof queries = {
  'crews looked for by a rare name': (db, one) =>
    crewList.page(db, company, { search: `${Math.floor(one / 15)}`, most }),
  'assignments that are past': (db) => assignmentList.list(db, company, { when: 'past', at }),
  'people looked for by a rare name': (db, one) => roll.page(db, company, { search: `b-${one}` }),
};

/** Milliseconds: the median of some runs, each for another crew or person. */
async function median(db: Db, query: Query, { people }: Size): Promise<number> {
  const times: number[] = [];
  for (let run = 0; run < runs; run += 1) {
    const one = Math.floor(((run * 0.618034) % 1) * people);
    const start = performance.now();
    await query(db, one);
    times.push(performance.now() - start);
  }
  return times.sort((a, b) => a - b)[runs >> 1]!;
}

const folder = kept ?? mkdtempSync(join(tmpdir(), 'underlap-growth-'));
try {
  const stores = [];
  for (const size of sizes) {
    const place = { folder: join(folder, String(size.people)) };
    const file = sqliteFile(place.folder);
    const start = performance.now();
    if (!existsSync(file)) await fill(place, size);
    const gigabytes = (statSync(file).size / 2 ** 30).toFixed(2);
    const spent = ((performance.now() - start) / 1000).toFixed(0);
    const attempts = size.people * size.perPerson;
    console.log(`${size.people} people, ${attempts} attempts: ${gigabytes} GB in ${spent} s`);
    stores.push({ size, ...openDatabase(place) });
  }
  for (const [name, query] of Object.entries({ ...queries, ...walks })) {
    const best = stores.map(() => Infinity);
    for (let round = 0; round < rounds; round += 1) {
      for (const [place, { db, size }] of stores.entries()) {
        best[place] = Math.min(best[place]!, await median(db, query, size));
      }
    }
    const growth = best.slice(1).map((time, place) => time / best[place]!);
    const holds = growth.every((times) => times < bound);
    const isHeld = name in queries;
    if (!holds && isHeld) process.exitCode = 1;
    const times = best.map((time) => time.toFixed(2)).join(', ');
    const ratios = growth.map((ratio) => ratio.toFixed(2)).join(', ');
    console.log(
      `${!isHeld ? 'grows' : holds ? 'holds' : 'FAILS'}  ${name}: ${times} ms; times ${ratios}`,
    );
  }
  console.log(`load of the machine ${loadavg()[0]!.toFixed(1)}`);
  for (const { close } of stores) await close();
} finally {
  if (kept === undefined) rmSync(folder, { recursive: true, force: true });
}
