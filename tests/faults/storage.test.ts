import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { migrate, openDatabase, sqliteFile } from '#server/database/open-database.ts';
import { checkRecords } from '#server/operations/records-check.ts';
import { type Server, startServer } from './server-process.ts';
import { type Company, post, signedInCompany, submission } from './signed-in.ts';

let folder: string;
let company: Company;
let server: Server | undefined;

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'underlap-storage-'));
  const records = openDatabase({ folder });
  await migrate(records);
  company = await signedInCompany(records, 1);
  await records.close();
});

afterEach(async () => {
  await server?.kill();
  server = undefined;
  rmSync(folder, { recursive: true, force: true });
});

const send = (list: readonly unknown[]) => {
  const cookie = company.apprentices[0]!.cookie;
  return post(server!.address, { company: company.company, cookie }, list);
};

async function attemptsKept(): Promise<number> {
  const records = openDatabase({ folder });
  try {
    expect((await checkRecords(records)).faults).toEqual([]);
    return (await records.db.selectFrom('attempt').select('id').execute()).length;
  } finally {
    await records.close();
  }
}

const outage = { code: 'OUTAGE', message: expect.stringContaining('Try again') as string };

/** No file may grow over this: a write past it is refused as on a full disk (in blocks of 1024 bytes). */
const blocks = 2048;

test('on a full disk a submission is refused whole, and is taken once there is room', async () => {
  const through = ['bash', '-c', `trap '' XFSZ; ulimit -S -f ${blocks}; exec "$@"`, 'server'];
  server = await startServer({ folder }, { folder, through });
  let acknowledged = 0;
  const batch = () => Array.from({ length: 50 }, (_, n) => submission(n));
  let refused: { readonly list: readonly unknown[]; readonly answer: Response } | undefined;
  for (let tries = 0; tries < 100 && !refused; tries += 1) {
    const list = batch();
    const answer = await send(list);
    if (answer.ok) acknowledged += list.length;
    else refused = { list, answer };
  }
  expect(refused?.answer.status).toBe(503);
  expect(Number(refused?.answer.headers.get('retry-after'))).toBeGreaterThan(0);
  expect(await refused?.answer.json()).toMatchObject(outage);
  expect(server.log()).toMatch(/"event":"fault".*"outage":"(FULL|UNWRITABLE)"/);
  // What can be read is still shown meanwhile.
  const cookie = company.office.cookie;
  const page = await fetch(`${server.address}/company/${company.company}`, { headers: { cookie } });
  expect(page.status).toBe(200);

  const { execFileSync } = await import('node:child_process');
  execFileSync('prlimit', ['--pid', String(server.pid), '--fsize=unlimited']);
  const again = await send(refused!.list);
  expect(again.status).toBe(200);
  expect(await attemptsKept()).toBe(acknowledged + refused!.list.length);
});

test('while another holds the records a submission is refused, and is taken afterwards', async () => {
  server = await startServer({ folder }, { folder });
  expect((await send([submission(0)])).status).toBe(200);
  const other = new DatabaseSync(sqliteFile(folder));
  other.exec('begin immediate');
  const list = [submission(1)];
  const [one, two] = await Promise.all([send(list), send([submission(2)])]);
  expect([one.status, two.status]).toEqual([503, 503]);
  expect(await one.json()).toMatchObject(outage);
  other.exec('commit');
  other.close();
  expect((await send(list)).status).toBe(200);
  expect(await attemptsKept()).toBe(2);
});
