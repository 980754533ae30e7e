/**
 * How many attempts a second one server process marks and stores, each answered once it is on the disk,
 * beside an app of the same framework that only reads and answers JSON. The client is another process.
 * Rounds take turns and the best of each counts, as other work on the machine only ever slows. Then what
 * the process keeps of memory. Marking a wall and its answer alone cost more than the bare app takes for
 * a whole request, so half of its rate, which would be fine to have, is told and a tenth is held.
 *
 *   npm run bench -- submissions
 */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { migrate, openDatabase, type Place } from '#server/database/open-database.ts';
import { startServer } from '../faults/server-process.ts';
import { startCluster } from '../server/cluster.ts';
import { startBareApp } from './load/bare-app.ts';
import type { Report, Shot } from './load/client.ts';
import { fire } from './load/fire.ts';
import { submissionsTo } from './load/submissions.ts';

const rounds = 3;
const seconds = 4;
const connectionCounts = [16, 64];
const restMilliseconds = 5000;
const submissionsBeforeRest = 10_000;

const pause = (milliseconds: number) => new Promise((resolve) => setTimeout(resolve, milliseconds));
const load = () => `load of the machine ${loadavg()[0]!.toFixed(1)}`;

type Target = {
  readonly name: string;
  readonly address: string;
  readonly shots: readonly Shot[];
};

async function serverOn(name: string, place: Place, folder: string) {
  const records = openDatabase(place);
  await migrate(records);
  const shots = await submissionsTo(records);
  await records.close();
  const server = await startServer(place, { folder, env: { LOG_LEVEL: 'error' } });
  return { server, target: { name, address: server.address, shots } };
}

/** The memory that a process holds, in megabytes; undefined where the system does not say. */
function memoryOf(pid: number): number | undefined {
  try {
    const status = readFileSync(`/proc/${pid}/status`, 'utf8');
    return Math.round(Number(/VmRSS:\s+(\d+)/.exec(status)?.[1]) / 1024);
  } catch {
    return undefined;
  }
}

const send = ({ address, shots }: Target, connections: number, limits = { seconds, most: 1e9 }) =>
  fire({ address, shots, connections, ...limits, expect: '"kept":"now"' });

const told = ({ perSecond, p50, p99 }: Report): string =>
  `${perSecond.toFixed(0)} a second, half within ${p50.toFixed(1)} ms, 99 of 100 within ${p99.toFixed(1)} ms`;

async function compare(targets: readonly Target[], connections: number): Promise<void> {
  const best = new Map<string, Report>();
  for (let round = 0; round < rounds; round += 1) {
    for (const target of targets) {
      const report = await send(target, connections);
      const before = best.get(target.name);
      if (!before || report.perSecond > before.perSecond) best.set(target.name, report);
    }
  }
  console.log(`${connections} connections (${load()})`);
  const bare = best.get('bare')!;
  for (const [name, report] of best) {
    const share = report.perSecond / bare.perSecond;
    console.log(
      `  ${name.padEnd(8)} ${told(report)}; ${(100 * share).toFixed(0)} % of the bare rate`,
    );
    if (name === 'sqlite') {
      console.log(
        `  ${share < 0.1 ? 'FAILS' : 'holds'}    at least a tenth of the bare rate; wished for: half`,
      );
      if (share < 0.1) process.exitCode = 1;
    }
  }
}

const folder = mkdtempSync(join(tmpdir(), 'underlap-bench-'));
const cluster = startCluster();
const bare = await startBareApp();
const sqlite = await serverOn('sqlite', { folder }, folder);
const postgres = await serverOn('postgres', { url: cluster.urlOf('postgres') }, folder);
try {
  await pause(restMilliseconds);
  const memoryBefore = memoryOf(sqlite.server.pid);
  const shots = sqlite.target.shots.map((shot) => ({ ...shot, path: '/attempts' }));
  const targets = [{ name: 'bare', address: bare.address, shots }, sqlite.target, postgres.target];

  const warm = { seconds: 600, most: submissionsBeforeRest };
  const all = await send(sqlite.target, 16, warm);
  await pause(restMilliseconds);
  console.log(
    `memory at rest: ${memoryBefore} MB after the start, ` +
      `${memoryOf(sqlite.server.pid)} MB after ${all.count} submissions`,
  );
  await send(targets[0]!, 16);
  await send(targets[2]!, 16);
  for (const connections of connectionCounts) await compare(targets, connections);
} finally {
  await sqlite.server.kill();
  await postgres.server.kill();
  bare.stop();
  cluster.stop();
  rmSync(folder, { recursive: true, force: true });
}
