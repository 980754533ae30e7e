/**
 * 500 candidates who save answers at once, through one server process with SQLite: each answer is
 * acknowledged once it is on the disk. Beside it an app of the same framework that only reads and answers
 * JSON, in the same run. Afterwards every answer that was acknowledged is looked for in the records.
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
import { answersTo } from './load/exam-answers.ts';
import { fire } from './load/fire.ts';

const candidates = 500;
/** A form of 30 questions, each answered once. */
const each = 30;

const folder = mkdtempSync(join(tmpdir(), 'underlap-bench-'));
const place = { folder };
const records = openDatabase(place);
await migrate(records);
const shots = await answersTo(records, candidates);
await records.close();

const told = ({ count, perSecond, p50, p99 }: Report): string =>
  `${count} answered, ${perSecond.toFixed(0)} a second, half within ${p50.toFixed(0)} ms, ` +
  `99 of 100 within ${p99.toFixed(0)} ms`;

const bareShots: readonly Shot[] = shots.map(({ headers, body: [before, after] }) => ({
  path: '/attempts',
  headers,
  body: [`{"attempts":[{"kept":{"id":"`, `","was":${JSON.stringify(before + after)}}}]}`],
}));

const bare = await startBareApp();
const server = await startServer(place, { folder, env: { LOG_LEVEL: 'error' } });
try {
  const limits = { connections: candidates, seconds: 600 };
  const send = (most: number) =>
    fire({ address: server.address, shots, ...limits, most, expect: '"as":"taken"' });
  const sendBare = (most: number) =>
    fire({ address: bare.address, shots: bareShots, ...limits, most, expect: '"kept":"now"' });
  const warm = await send(candidates);
  await sendBare(candidates);
  const reports = { bare: await sendBare(candidates * each), exam: await send(candidates * each) };
  console.log(`${candidates} candidates at once (load of the machine ${loadavg()[0]!.toFixed(1)})`);
  for (const [name, report] of Object.entries(reports)) {
    console.log(`  ${name.padEnd(5)} ${told(report)}`);
  }
  const ratio = reports.exam.p99 / reports.bare.p99;
  console.log(`  99 of 100 take ${ratio.toFixed(1)} times as long as with the bare app`);
  await server.kill();
  const kept = openDatabase(place);
  const { count } = await kept.db
    .selectFrom('sitting_event')
    .select(({ fn }) => fn.countAll().as('count'))
    .where('kind', '=', 'answered')
    .executeTakeFirstOrThrow();
  await kept.close();
  const sent = warm.count + reports.exam.count;
  const isWhole = Number(count) === sent;
  console.log(`  ${isWhole ? 'holds' : 'FAILS'} ${sent} acknowledged, ${count} in the records`);
  if (!isWhole) process.exitCode = 1;
} finally {
  await server.kill();
  bare.stop();
  rmSync(folder, { recursive: true, force: true });
}
