/** Everything that makes a credential one not to be trusted, by its code. */
import { createHmac } from 'node:crypto';
import { compactVerify, importJWK, jwtVerify, SignJWT } from 'jose';
import { describe, expect, test } from 'vitest';
import { toBase64url } from '#engine/credential/base64url.ts';
import { claimsOf } from '#engine/credential/claims.ts';
import {
  compactFrom,
  compactOf,
  longestCompact,
  signingInput,
} from '#engine/credential/compact.ts';
import { credentialOf } from '#engine/credential/credential.ts';
import { headerFor } from '#engine/credential/header.ts';
import { type Verifier, verifyCredential } from '#engine/credential/verify.ts';
import { freshKey, isSigned, publicOf, signCompact } from '#server/certificates/signature.ts';
import { certified, moment, origin } from '../../engine/credential/certified.ts';

const [own, other] = [freshKey(), freshKey()];
const kid = `${origin}/keys/1`;
const header = headerFor(kid);
const credential = credentialOf(certified, 'en');
const payload = { ...credential, ...claimsOf(credential) };
const compact = signCompact(own, header, payload);

const verifier: Verifier = {
  isTrusted: (issuer) => issuer === certified.issuer.id,
  keyOf: (asked) => (asked === kid ? publicOf(own) : undefined),
  isSigned,
  now: moment('2031-01-01T12:00:00Z'),
  state: 'in-force',
};

const check = (text: string, changed: Partial<Verifier> = {}) =>
  verifyCredential(text, { ...verifier, ...changed });

const encoded = (value: object): string =>
  toBase64url(new TextEncoder().encode(JSON.stringify(value)));

describe('a credential that is right', () => {
  test('is right, by our own verifier and by an independent one', async () => {
    expect(await check(compact)).toEqual({ ok: true, value: { credential: payload, kid } });
    const key = await importJWK({ ...publicOf(own) }, 'EdDSA');
    const verified = await jwtVerify(compact, key, {
      algorithms: ['EdDSA'],
      issuer: certified.issuer.id,
      subject: credential.credentialSubject.id,
      currentDate: new Date('2031-01-01T12:00:00Z'),
      typ: 'JWT',
    });
    expect(verified.payload).toEqual(JSON.parse(JSON.stringify(payload)));
    expect(verified.protectedHeader).toEqual({ alg: 'EdDSA', kid, typ: 'JWT' });
  });

  test('made by the independent library, is right for ours', async () => {
    const key = await importJWK({ ...own }, 'EdDSA');
    const made = await new SignJWT({ ...payload }).setProtectedHeader({ ...header }).sign(key);
    expect((await check(made)).ok).toBe(true);
    expect(made).toBe(compact);
  });

  test('is right as far as it goes by itself where nobody can be asked', async () => {
    const { state: _, ...alone } = verifier;
    expect((await verifyCredential(`${compact}\n`, alone)).ok).toBe(true);
  });
});

describe('forms', () => {
  const [head = '', body = '', tail = ''] = compact.split('.');
  test.each([
    ['nothing', ''],
    ['two parts', `${head}.${body}`],
    ['four parts', `${compact}.x`],
    ['padding', `${head}=.${body}.${tail}`],
    ['a blank within', `${head}. ${body}.${tail}`],
    ['no JSON', `${head}.${toBase64url(new TextEncoder().encode('{'))}.${tail}`],
    ['a list', `${head}.${encoded([])}.${tail}`],
    ['null', `${toBase64url(new TextEncoder().encode('null'))}.${body}.${tail}`],
    ['bytes that are no UTF-8', `${head}.${toBase64url(Uint8Array.of(0xff))}.${tail}`],
    ['too much', 'x'.repeat(longestCompact + 1)],
  ])('%s is refused', async (_, text) => {
    expect(await check(text)).toEqual({ ok: false, error: 'NOT_COMPACT' });
    expect(compactFrom(text).ok).toBe(false);
  });
});

describe('refusals', () => {
  const refused = async (text: string, error: string, changed?: Partial<Verifier>) =>
    expect(await check(text, changed)).toEqual({ ok: false, error });
  const signedWith = (change: object) => signCompact(own, header, { ...payload, ...change });

  test('WRONG_SIGNATURE: a word was changed after signing', async () => {
    const [head = '', , tail = ''] = compact.split('.');
    const changed = `${head}.${encoded({ ...payload, name: 'Crew lead' })}.${tail}`;
    await refused(changed, 'WRONG_SIGNATURE');
    const key = await importJWK({ ...publicOf(own) }, 'EdDSA');
    await expect(compactVerify(changed, key)).rejects.toThrow();
  });

  test('WRONG_SIGNATURE: every single bit of the signature counts', async () => {
    const input = signingInput(header, payload);
    const read = compactFrom(compact);
    if (!read.ok) throw new Error(read.error);
    for (let bit = 0; bit < 512; bit += 1) {
      const signature = Uint8Array.from(read.value.signature);
      signature[bit >> 3]! ^= 1 << (bit & 7);
      await refused(compactOf(input, signature), 'WRONG_SIGNATURE');
    }
  });

  test('WRONG_SIGNATURE: none, short, or of another key', async () => {
    const input = signingInput(header, payload);
    await refused(`${input}.`, 'WRONG_SIGNATURE');
    await refused(compactOf(input, new Uint8Array(63)), 'WRONG_SIGNATURE');
    await refused(compactOf(input, new Uint8Array(64)), 'WRONG_SIGNATURE');
    await refused(signCompact(other, header, payload), 'WRONG_SIGNATURE');
  });

  test('WRONG_ALGORITHM: none, and the public key as a shared secret', async () => {
    const none = signingInput({ ...header, alg: 'none' }, payload);
    await refused(`${none}.`, 'WRONG_ALGORITHM');
    const input = signingInput({ ...header, alg: 'HS256' }, payload);
    for (const secret of [Buffer.from(own.x, 'base64url'), own.x, JSON.stringify(publicOf(own))]) {
      const mac = createHmac('sha256', secret).update(input).digest();
      await refused(compactOf(input, mac), 'WRONG_ALGORITHM');
    }
    await refused(signCompact(own, { ...header, alg: 'RS256' }, payload), 'WRONG_ALGORITHM');
  });

  test.each([
    ['UNKNOWN_HEADER', { ...header, crit: ['exp'] }],
    ['UNKNOWN_HEADER', { ...header, jku: 'https://evil.example/keys' }],
    ['UNKNOWN_HEADER', { ...header, jwk: publicOf(other) }],
    ['PRIVATE_KEY_SHOWN', { ...header, jwk: other }],
    ['NO_KEY_NAMED', { alg: 'EdDSA', typ: 'JWT' }],
    ['WRONG_TYPE', { ...header, typ: 'at+jwt' }],
  ])('%s: the header says %j', async (error, said) => {
    await refused(signCompact(own, said, payload), error);
  });

  test('UNKNOWN_KEY and KEY_OF_ANOTHER: a key nobody published, or another did', async () => {
    const named = (id: string) => signCompact(own, headerFor(id), payload);
    await refused(named(`${origin}/keys/2`), 'UNKNOWN_KEY');
    const keyOf = () => publicOf(own);
    await refused(named('https://evil.example/keys/1'), 'KEY_OF_ANOTHER', { keyOf });
    await refused(named('did:key:z6Mk'), 'KEY_OF_ANOTHER', { keyOf });
  });

  test('WRONG_ISSUER: signed and whole, by somebody who is not asked', async () => {
    await refused(compact, 'WRONG_ISSUER', { isTrusted: (id) => id.includes('south') });
    const issuer = { ...credential.issuer, id: 'did:web:evil.example' };
    await refused(signedWith({ issuer, iss: issuer.id }), 'WRONG_ISSUER');
  });

  test.each([
    { iss: 'did:web:underlap.example:issuers:south' },
    { jti: 'https://underlap.example/verify/other#issue-1' },
    { nbf: claimsOf(credential).nbf - 1 },
    { sub: 'https://underlap.example/verify/other#holder' },
    { exp: claimsOf(credential).exp + 86_400 },
    { exp: undefined },
    { nbf: String(claimsOf(credential).nbf) },
  ])('CLAIM_DIFFERS: %j', async (claim) => {
    await refused(signedWith(claim), 'CLAIM_DIFFERS');
  });

  test('a property that must be there is told by its own code', async () => {
    await refused(signedWith({ type: ['VerifiableCredential'] }), 'TYPE_WRONG');
    await refused(signedWith({ '@context': [] }), 'CONTEXT_WRONG');
  });

  test('NOT_YET_VALID and EXPIRED: both ends included', async () => {
    const at = (text: string) => ({ now: moment(text) });
    await refused(compact, 'NOT_YET_VALID', at('2030-04-30T23:59:59Z'));
    expect((await check(compact, at('2030-05-01T00:00:00Z'))).ok).toBe(true);
    expect((await check(compact, at('2033-05-01T23:59:59Z'))).ok).toBe(true);
    await refused(compact, 'EXPIRED', at('2033-05-02T00:00:00Z'));
  });

  test.each([
    ['suspended', 'SUSPENDED'],
    ['withdrawn', 'WITHDRAWN'],
    ['replaced', 'REPLACED'],
  ] as const)('%s: %s', async (state, error) => {
    await refused(compact, error, { state });
  });

  test('the signature is asked before anything it covers is believed', async () => {
    const forged = signCompact(other, header, { ...payload, exp: 1 });
    await refused(forged, 'WRONG_SIGNATURE', { state: 'withdrawn' });
  });
});
