import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { migrate, openDatabase } from '#server/database/open-database.ts';
import { type Cluster, startCluster } from '../server/cluster.ts';
import { reckon } from './reckoning.ts';
import { startSenders } from './senders.ts';
import { type Server, startServer } from './server-process.ts';
import { type Company, makeCrew, post, signedInCompany, submission } from './signed-in.ts';

const pause = (milliseconds: number) => new Promise((resolve) => setTimeout(resolve, milliseconds));

let cluster: Cluster;
let company: Company;
let servers: readonly Server[];
const folder = mkdtempSync(join(tmpdir(), 'underlap-shared-'));
const place = () => ({ url: cluster.urlOf('postgres') });

beforeAll(async () => {
  cluster = startCluster();
  const records = openDatabase(place());
  await migrate(records);
  company = await signedInCompany(records, 3);
  await records.close();
  servers = await Promise.all([1, 2].map(() => startServer(place(), { folder })));
}, 120_000);

afterAll(async () => {
  await Promise.all((servers ?? []).map((server) => server.kill()));
  cluster?.stop();
});

const at = (server: number) => servers[server]!.address;
const page = (server: number, path: string, cookie: string) =>
  fetch(`${at(server)}${path}`, { headers: { cookie, accept: 'text/html' }, redirect: 'manual' });

const form = (server: number, path: string, fields: Record<string, string>, cookie = '') =>
  fetch(`${at(server)}${path}`, {
    method: 'POST',
    redirect: 'manual',
    headers: {
      'content-type': 'application/x-www-form-urlencoded',
      accept: 'text/html',
      origin: at(server),
      cookie,
    },
    body: new URLSearchParams(fields).toString(),
  });

test('a session of one process is known to the other, and ended on both at once', async () => {
  const { email } = company.apprentices[0]!;
  const signedIn = await form(0, '/sign-in', { name: email, password: 'a long password' });
  expect(signedIn.status).toBe(303);
  const cookie = signedIn.headers.getSetCookie()[0]!.split(';')[0]!;
  expect((await page(1, '/account', cookie)).status).toBe(200);
  const out = await form(1, '/account?/out', {}, cookie);
  expect(out.status).toBe(303);
  for (const server of [0, 1]) {
    const after = await page(server, '/account', cookie);
    expect(after.headers.get('location')).toContain('/sign-in');
  }
});

test('tries at a password are counted by both together', async () => {
  const { email } = company.apprentices[1]!;
  const answers: number[] = [];
  for (let tries = 0; tries < 12; tries += 1) {
    const answer = await form(tries % 2, '/sign-in', { name: email, password: 'a wrong password' });
    answers.push(answer.status);
  }
  expect(answers.slice(0, 10)).toEqual(Array.from({ length: 10 }, () => 400));
  expect(answers.slice(10)).toEqual([429, 429]);
});

test('a crew made by one is shown by the other, and an attempt sent to both is kept once', async () => {
  await makeCrew(at(0), company, 'Crew of the first');
  const shown = await page(1, `/company/${company.company}/crews`, company.office.cookie);
  expect(await shown.text()).toContain('Crew of the first');

  const { cookie } = company.apprentices[2]!;
  const list = [submission(0, company.work)];
  const answers = await Promise.all(
    [0, 1].map((server) => post(at(server), { company: company.company, cookie }, list)),
  );
  const receipts = await Promise.all(
    answers.map((answer) => answer.json() as Promise<{ receipts: { kept: string }[] }>),
  );
  expect(receipts.map(({ receipts: [one] }) => one?.kept).sort()).toEqual(['before', 'now']);
  const records = openDatabase(place());
  const { tries } = await records.db
    .selectFrom('progress')
    .select('tries')
    .where('work_id', '=', company.work)
    .executeTakeFirstOrThrow();
  await records.close();
  expect(tries).toBe(1);
});

test('what one withdraws is work no longer for the other', async () => {
  const records = openDatabase(place());
  const other = await signedInCompany(records, 1);
  const { assignment_id: assignment } = await records.db
    .selectFrom('assignment_work')
    .select('assignment_id')
    .where('id', '=', other.work)
    .executeTakeFirstOrThrow();
  await records.close();
  const { cookie } = other.apprentices[0]!;
  const sent = async (server: number) => {
    // Every third is for the work.
    const list = [submission(0, other.work)];
    const answer = await post(at(server), { company: other.company, cookie }, list);
    return ((await answer.json()) as { receipts: { notCounted?: string }[] }).receipts[0];
  };
  expect((await sent(0))?.notCounted).toBeUndefined();
  const path = `/company/${other.company}/assignments/${assignment}?/withdraw`;
  expect((await form(1, path, {}, other.office.cookie)).status).toBe(200);
  expect((await sent(0))?.notCounted).toBe('NOT_OPEN');
  expect((await sent(1))?.notCounted).toBe('NOT_OPEN');
});

test('when PostgreSQL is restarted in mid-use, both go on by themselves and nothing is lost', async () => {
  const records = openDatabase(place());
  const fresh = await signedInCompany(records, 3);
  await records.close();
  let turn = 0;
  const stream = startSenders(fresh, () => at((turn += 1) % 2));
  while (stream.acknowledged.size < 20) await pause(10);
  // A restart between two requests is felt by nobody: again, until one was in mid-use.
  for (let restarts = 0; restarts < 20 && stream.counts.again === 0; restarts += 1) {
    const before = stream.acknowledged.size;
    cluster.restart();
    while (stream.acknowledged.size < before + 20) await pause(10);
  }
  await stream.stop();
  expect(stream.counts.again).toBeGreaterThan(0);
  // One of them may have been idle just then, and has only opened new connections.
  const log = servers.map((server) => server.log()).join('');
  const told = [...log.matchAll(/"event":"fault".*?"outage":"(\w+)"/g)].map(([, what]) => what);
  expect(new Set(told)).toEqual(new Set(['AWAY']));
  expect(log).toMatch(/"status":503/);
  expect(log).not.toMatch(/"status":500/);
  for (const { address } of servers) expect((await fetch(`${address}/health`)).status).toBe(200);
  const opened = openDatabase(place());
  const others = await opened.db
    .selectFrom('attempt')
    .select('id')
    .where('company_id', '=', company.company)
    .execute();
  expect(others).toHaveLength(1);
  await reckon(opened, fresh, stream.acknowledged);
  await opened.close();
});
