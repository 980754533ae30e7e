/**
 * How many credentials a second are signed and verified, beside an independent library in the same run; and
 * how fast the verification page is answered beside a bare endpoint of the same server, which asks the records
 * for nothing. Rounds take turns and the best of each counts, as other work on the machine only ever slows.
 *
 *   npm run bench -- certificates
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { importJWK, jwtVerify, SignJWT } from 'jose';
import type { IsoDate } from '#engine/calendar.ts';
import { claimsOf } from '#engine/credential/claims.ts';
import { credentialOf } from '#engine/credential/credential.ts';
import { headerFor } from '#engine/credential/header.ts';
import { verifyCredential } from '#engine/credential/verify.ts';
import type { SchemeId } from '#engine/exam/scheme.ts';
import { grantCertificate } from '#server/certificates/grant.ts';
import { freshKey, isSigned, publicOf, signCompact } from '#server/certificates/signature.ts';
import { found } from '#server/companies/companies.ts';
import { openContent } from '#server/content.ts';
import { migrate, openDatabase } from '#server/database/open-database.ts';
import { freshId } from '#server/fresh-id.ts';
import { certified, moment, origin } from '../engine/credential/certified.ts';
import { startServer } from '../faults/server-process.ts';
import { besideBare } from './load/beside-bare.ts';

const rounds = 3;
const milliseconds = 1000;

/** How many times a second. */
async function rateOf(work: () => unknown): Promise<number> {
  const start = performance.now();
  let count = 0;
  while (performance.now() - start < milliseconds) {
    await work();
    count += 1;
  }
  return (1000 * count) / (performance.now() - start);
}

async function best(works: Readonly<Record<string, () => unknown>>) {
  const rates = new Map<string, number>();
  for (let round = 0; round < rounds; round += 1) {
    for (const [name, work] of Object.entries(works)) {
      rates.set(name, Math.max(rates.get(name) ?? 0, await rateOf(work)));
    }
  }
  return rates;
}

async function signatures(): Promise<void> {
  const key = freshKey();
  const kid = `${origin}/keys/1`;
  const credential = credentialOf(certified, 'en');
  const payload = { ...credential, ...claimsOf(credential) };
  const compact = signCompact(key, headerFor(kid), payload);
  const theirs = await importJWK({ ...key }, 'EdDSA');
  const theirPublic = await importJWK({ ...publicOf(key) }, 'EdDSA');
  const now = moment('2031-01-01T12:00:00Z');
  const known = publicOf(key);
  const verifier = {
    isTrusted: (issuer: string) => issuer === certified.issuer.id,
    keyOf: () => known,
    isSigned,
    now,
    state: 'in-force' as const,
  };
  const currentDate = new Date(now * 1000);
  const rates = await best({
    sign: () => signCompact(key, headerFor(kid), payload),
    'sign, theirs': () =>
      new SignJWT({ ...payload }).setProtectedHeader({ ...headerFor(kid) }).sign(theirs),
    verify: () => verifyCredential(compact, verifier),
    'verify, theirs': () => jwtVerify(compact, theirPublic, { currentDate }),
  });
  for (const name of ['sign', 'verify']) {
    const [ours = 0, other = 1] = [rates.get(name), rates.get(`${name}, theirs`)];
    console.log(
      `  ${name.padEnd(7)} ${ours.toFixed(0)} a second, ${(ours / other).toFixed(2)} of the library's ${other.toFixed(0)}`,
    );
  }
}

/** As many certificates as one company may have, so that looking one up is a real look. */
const held = 2000;

async function recordsIn(folder: string): Promise<readonly string[]> {
  const records = openDatabase({ folder });
  await migrate(records);
  const { db } = records;
  const at = new Date().toISOString();
  const { company, person } = await found(db, {
    name: 'Bench',
    office: 'Olga Office',
    login: freshId(),
    at,
  });
  const content = openContent();
  const scheme = content.schemes.get('base-of-wall-installer' as SchemeId)!;
  const by = { company, companyName: 'Bench', isDemo: false, person, name: 'Olga', crew: null };
  const act = { by: { ...by, roles: ['office' as const] }, at };
  const grant = {
    person,
    scheme,
    ruling: null,
    grantedOn: at.slice(0, 10) as IsoDate,
    validUntil: '2099-01-01' as IsoDate,
    renews: null,
  };
  await db.transaction().execute(async (trx) => {
    for (let each = 0; each < held; each += 1) await grantCertificate(trx, act, content, grant);
  });
  const rows = await db.selectFrom('certificate').select('public_id').execute();
  await records.close();
  return rows.map(({ public_id: publicId }) => publicId);
}

async function pages(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'underlap-bench-'));
  const publicIds = await recordsIn(folder);
  const env = { LOG_LEVEL: 'error', TRUSTED_PROXIES: '127.0.0.1' };
  const server = await startServer({ folder }, { folder, env });
  let turn = 0;
  const next = () => publicIds[(turn += 1) % publicIds.length]!;
  try {
    await besideBare(
      `${held} certificates`,
      () => ({ address: `${server.address}/verify/${next()}`, headers: { accept: 'text/html' } }),
      () => ({ address: `${server.address}/content/current`, headers: { accept: 'text/html' } }),
    );
  } finally {
    await server.kill();
    rmSync(folder, { recursive: true, force: true });
  }
}

console.log(`  load of the machine ${loadavg()[0]!.toFixed(1)}`);
await signatures();
await pages();
