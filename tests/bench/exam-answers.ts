/**
 * 500 candidates who save answers at once, through one server process with SQLite: each answer is
 * acknowledged once it is on the disk, and each candidate gives the next as soon as a connection is free,
 * far quicker than people do. Beside it an app of the same framework that only reads and answers JSON, in
 * the same run. Afterwards every answer that was acknowledged is looked for in the records.
 *
 *   npm run bench -- exam-answers
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { migrate, openDatabase } from '#server/database/open-database.ts';
import { startServer } from '../faults/server-process.ts';
import { startBareApp } from './load/bare-app.ts';
import type { Report, Shot } from './load/client.ts';
import { answersOf } from './load/exam-answers.ts';
import { fire } from './load/fire.ts';

const candidates = 500;
/** How many times longer than the bare app's the slowest hundredth may take. */
const boundOfRatio = 20;

const told = ({ count, perSecond, p50, p99 }: Report): string =>
  `${count} answered, ${perSecond.toFixed(0)} a second, half within ${p50.toFixed(0)} ms, ` +
  `99 of 100 within ${p99.toFixed(0)} ms`;

/** The same bytes, and what the bare app makes its answer from. */
const toBare = ({ headers, body: [before, after] }: Shot): Shot => ({
  path: '/attempts',
  headers,
  body: [`{"attempts":[{"kept":{"id":"`, `","was":${JSON.stringify(before + after)}}}]}`],
});

async function answersKept(folder: string): Promise<number> {
  const { db, close } = openDatabase({ folder });
  const rows = await db
    .selectFrom('sitting_event')
    .select(['sitting_id', 'detail'])
    .where('kind', '=', 'answered')
    .execute();
  await close();
  return new Set(rows.map(({ sitting_id, detail }) => `${sitting_id} ${detail}`)).size;
}

const folder = mkdtempSync(join(tmpdir(), 'underlap-bench-'));
const records = openDatabase({ folder });
await migrate(records);
console.log(`setting up ${candidates} sittings`);
const shots = await answersOf(records, candidates);
await records.close();

const bare = await startBareApp();
const server = await startServer({ folder }, { folder, env: { LOG_LEVEL: 'error' } });
try {
  const [most, limits] = [shots.length, { connections: candidates, seconds: 600 }];
  const sendBare = () =>
    fire({
      address: bare.address,
      shots: shots.map(toBare),
      ...limits,
      most,
      expect: '"kept":"now"',
    });
  await sendBare();
  const plain = await sendBare();
  const exam = await fire({
    address: server.address,
    shots,
    ...limits,
    most,
    expect: '"as":"taken"',
  });
  console.log(`${candidates} candidates at once (load of the machine ${loadavg()[0]!.toFixed(1)})`);
  console.log(`  bare  ${told(plain)}`);
  console.log(`  exam  ${told(exam)}`);
  await server.kill();
  const kept = await answersKept(folder);
  const ratio = exam.p99 / plain.p99;
  const claims = {
    [`${exam.count} answers acknowledged, ${kept} in the records after the server was killed`]:
      kept === exam.count && kept === shots.length,
    [`99 of 100 take ${ratio.toFixed(1)} times as long as with the bare app, at most ${boundOfRatio}`]:
      ratio <= boundOfRatio,
  };
  for (const [claim, holds] of Object.entries(claims)) {
    console.log(`  ${holds ? 'holds' : 'FAILS'} ${claim}`);
    if (!holds) process.exitCode = 1;
  }
} finally {
  await server.kill();
  bare.stop();
  rmSync(folder, { recursive: true, force: true });
}
