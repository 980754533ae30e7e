import {
  chmodSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createLocalJWKSet, jwtVerify } from 'jose';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { checkCredential } from '#server/certificates/check-credential.ts';
import { issued } from '#server/certificates/issued.ts';
import { keyFile, keyIn } from '#server/certificates/key-file.ts';
import { didDocument, issuerDocument, keySet, oneKey } from '#server/certificates/published.ts';
import { list, presentKey, rotate } from '#server/certificates/signing-keys.ts';
import type { Act } from '#server/people/member.ts';
import { added, at, freshCompany } from '../people/company.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { allText } from '../people/staff.ts';
import { granted } from './granted.ts';

const origin = 'https://underlap.example';
const later = '2030-06-01T07:30:00.000Z';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'underlap-keys-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

describe('the file of the key', () => {
  test('is made when it is first needed, for its owner alone, and stays', () => {
    const inner = join(folder, 'inner');
    const key = keyIn(inner);
    expect(statSync(keyFile(inner)).mode & 0o777).toBe(0o600);
    expect(statSync(inner).mode & 0o777).toBe(0o700);
    expect(keyIn(inner)).toEqual(key);
    expect(readdirSync(inner)).toEqual(['signing-key.json']);
  });

  test('that others may read is not used, and says the cure', () => {
    keyIn(folder);
    chmodSync(keyFile(folder), 0o640);
    expect(() => keyIn(folder)).toThrow(/chmod 600/);
  });

  test('that holds no key is not used, and not written over', () => {
    writeFileSync(keyFile(folder), '{"kty":"OKP"}', { mode: 0o600 });
    expect(() => keyIn(folder)).toThrow(/holds no key/);
    expect(readFileSync(keyFile(folder), 'utf8')).toBe('{"kty":"OKP"}');
  });
});

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let act: Act;
  let person: string;
  beforeAll(async () => {
    records = await freshRecords(kind);
    act = await freshCompany(records.db);
    person = await added(records.db, act, { name: 'Ana Apprentice' });
  });
  afterAll(() => records.drop());

  const credentialOf = async (when: string): Promise<string> => {
    const id = await granted(records.db, act, { person });
    const made = await issued(records.db, { origin, keys: folder, at: when }, id);
    if (made === undefined) throw new Error('no credential');
    return made;
  };

  test('the private half is in no table', async () => {
    const { key } = await presentKey(records.db, folder, at);
    const all = await allText(records);
    expect(all).toContain(key.x);
    expect(all).not.toContain(key.d);
  });

  test('a credential is signed once and kept as it was', async () => {
    const { db } = records;
    const id = await granted(db, act, { person });
    const sign = (when: string) => issued(db, { origin, keys: folder, at: when }, id);
    const both = await Promise.all([sign(at), sign(at)]);
    expect(both[0]).toBe(both[1]);
    await rotate(db, folder, later);
    expect(await sign(later)).toBe(both[0]);
  });

  test('after a rotation old credentials verify, new ones are signed by the new key', async () => {
    const { db } = records;
    const before = await credentialOf(at);
    const { from, to } = await rotate(db, folder, later);
    const after = await credentialOf(later);
    expect(from).not.toBe(to);
    for (const [text, kid] of [
      [before, from],
      [after, to],
    ] as const) {
      const checked = await checkCredential(db, { origin, at: later }, text);
      expect(checked).toMatchObject({ ok: true, value: { kid: `${origin}/keys/${kid}` } });
    }
    const kept = await list(db);
    expect(kept.find(({ id }) => id === from)?.retiredAt).toBe(later);
    expect(kept.find(({ id }) => id === to)?.retiredAt).toBeNull();
    expect(readFileSync(keyFile(folder), 'utf8')).toContain(
      kept.find(({ id }) => id === to)!.key.x,
    );
    expect(statSync(keyFile(folder)).mode & 0o777).toBe(0o600);
  });

  test('the independent library verifies old and new by the published keys', async () => {
    const { db } = records;
    const before = await credentialOf(at);
    await rotate(db, folder, later);
    const after = await credentialOf(later);
    const { keys } = await keySet(db, origin);
    // It looks keys up by their whole name, which in a header is an address.
    const named = keys.map((key) => ({ ...key, kid: `${origin}/keys/${key.kid}` }));
    for (const text of [before, after]) {
      const currentDate = new Date(later);
      const verified = await jwtVerify(text, createLocalJWKSet({ keys: named }), { currentDate });
      expect(verified.payload.iss).toBe(`did:web:underlap.example:issuers:${act.by.company}`);
    }
  });

  test('what is published names the keys, the issuer, and nothing private', async () => {
    const { db } = records;
    const { id, key } = await presentKey(db, folder, at);
    const document = await didDocument(db, origin, act.by.company);
    expect(document?.id).toBe(`did:web:underlap.example:issuers:${act.by.company}`);
    expect(document?.assertionMethod).toContain(`${origin}/keys/${id}`);
    expect(await oneKey(db, id)).toEqual({
      kty: 'OKP',
      crv: 'Ed25519',
      x: key.x,
      kid: id,
      alg: 'EdDSA',
      use: 'sig',
    });
    const profile = await issuerDocument(db, origin, act.by.company);
    expect(profile).toMatchObject({ type: ['Profile'], name: 'Test company' });
    expect(JSON.stringify([document, profile, await keySet(db, origin)])).not.toContain(key.d);
    expect(await didDocument(db, origin, 'nobody')).toBeUndefined();
    expect(await issuerDocument(db, origin, 'nobody')).toBeUndefined();
    expect(await oneKey(db, 'none')).toBeUndefined();
  });
});
