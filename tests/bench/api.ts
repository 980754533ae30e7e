/**
 * How fast the API answers a program, beside a bare endpoint of the same server, which neither knows tokens
 * nor asks the records: a first page of people and of the board, of a company of a thousand.
 *
 *   npm run bench -- api
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { perToken } from '#server/api/allowance.ts';
import { freshToken, tokenDigest } from '#server/api/token-secret.ts';
import { schemesNow } from '#server/board/qualifications.ts';
import { openDatabase } from '#server/database/open-database.ts';
import { freshId } from '#server/fresh-id.ts';
import { startServer } from '../faults/server-process.ts';
import { besideBare } from './load/beside-bare.ts';
import { certify } from './load/certify.ts';
import { company, fill, idOf } from './load/fill.ts';

const people = 1000;
/** Enough for a thousand requests a second, so that none is held back for asking too often. */
const tokens = Math.ceil(60_000 / perToken.most);

async function tokensIn(folder: string): Promise<readonly string[]> {
  const { db, close } = openDatabase({ folder });
  const made = Array.from({ length: tokens }, () => freshToken());
  const now = Date.now();
  const rows = made.map((token) => ({
    id: freshId(),
    company_id: company,
    label: 'Bench',
    scopes: 'people.read board.read',
    digest: tokenDigest(token),
    made_by: idOf('person', 0),
    made_at: new Date(now).toISOString(),
    expires_at: new Date(now + 24 * 60 * 60 * 1000).toISOString(),
    revoked_at: null,
    last_used_on: null,
  }));
  await db.insertInto('api_token').values(rows).execute();
  await close();
  return made;
}

const folder = mkdtempSync(join(tmpdir(), 'underlap-bench-'));
await fill({ folder }, { people, perPerson: 8 });
certify(folder, people, await schemesNow());
const held = await tokensIn(folder);
const env = { LOG_LEVEL: 'error', TRUSTED_PROXIES: '127.0.0.1' };
const server = await startServer({ folder }, { folder, env });
let turn = 0;
const headers = () => ({ authorization: `Bearer ${held[(turn += 1) % held.length]!}` });
const bare = () => ({ address: `${server.address}/content/current`, headers: {} });
console.log(`  load of the machine ${loadavg()[0]!.toFixed(1)}`);
try {
  for (const path of ['people', 'board']) {
    const page = () => ({ address: `${server.address}/api/${path}`, headers: headers() });
    await besideBare(`/api/${path}, ${people} people`, page, bare);
  }
} finally {
  await server.kill();
  rmSync(folder, { recursive: true, force: true });
}
