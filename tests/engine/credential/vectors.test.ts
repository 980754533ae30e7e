import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromBase58, toBase58 } from '#engine/credential/base58.ts';
import { fromBase64url, toBase64url } from '#engine/credential/base64url.ts';
import { didWebAddress, isKeyOf, issuerAt, originOfIssuer } from '#engine/credential/issuer.ts';
import { fromMultikey, publicKeyFrom, toMultikey } from '#engine/credential/public-key.ts';

const hex = (text: string): Uint8Array => Uint8Array.from(Buffer.from(text, 'hex'));

describe('truth', () => {
  // The did:key method, w3c-ccg/did-key-spec; its bytes and JWK were recomputed from the text.
  const didKey = 'did:key:z6MkhaXgBZDvotDkL5257faiztiGiC2QtKLGpbnnEGta2doK';
  const key = '2e6fcce36701dc791488e0d0b1745cc1e33a4c1c9fcc41c63bd343dbbe0970e6';
  const x = 'Lm_M42cB3HkUiODQsXRcweM6TByfzEHGO9ND274JcOY';

  test('a did:key of Ed25519 is read to its published bytes, and written again', () => {
    const multikey = didKey.replace('did:key:', '');
    const read = fromMultikey(multikey);
    expect(read).toEqual({ ok: true, value: { kty: 'OKP', crv: 'Ed25519', x } });
    expect(fromBase64url(x)).toEqual({ ok: true, value: hex(key) });
    expect(toMultikey({ kty: 'OKP', crv: 'Ed25519', x })).toBe(multikey);
    expect(fromBase58(multikey.slice(1))).toEqual({ ok: true, value: hex(`ed01${key}`) });
  });

  // The same method: a key of another length is `invalidPublicKeyLength`, one not in base 58 is refused.
  test.each([
    [`z${toBase58(hex(`ed01${key}00`))}`, 'WRONG_KEY_LENGTH'],
    [`z${toBase58(hex(`ed01${key.slice(2)}`))}`, 'WRONG_KEY_LENGTH'],
    [`z${toBase58(hex(`ec01${key}`))}`, 'NOT_ED25519'],
    [`m${toBase58(hex(`ed01${key}`))}`, 'NOT_BASE58'],
    ['z0OIl', 'NOT_BASE58'],
    ['', 'NOT_BASE58'],
  ])('the key %s is refused: %s', (text, error) => {
    expect(fromMultikey(text)).toEqual({ ok: false, error });
  });

  // The did:web method, w3c-ccg/did-method-web.
  test.each([
    ['did:web:w3c-ccg.github.io', 'https://w3c-ccg.github.io/.well-known/did.json'],
    ['did:web:w3c-ccg.github.io:user:alice', 'https://w3c-ccg.github.io/user/alice/did.json'],
    ['did:web:example.com%3A3000:user:alice', 'https://example.com:3000/user/alice/did.json'],
  ])('%s is read at %s', (did, address) => {
    expect(didWebAddress(did)).toEqual({ ok: true, value: address });
  });

  test.each(['did:key:z6Mk', 'did:web:', 'did:web:a/b', 'did:web:a::b', 'https://a.example'])(
    '%s is no did:web',
    (did) => {
      expect(didWebAddress(did)).toEqual({ ok: false, error: 'NOT_DID_WEB' });
    },
  );

  // RFC 4648 (2006), section 10, with the padding left out; its alphabet for addresses, section 5.
  test.each([
    ['', ''],
    ['f', 'Zg'],
    ['fo', 'Zm8'],
    ['foo', 'Zm9v'],
    ['foob', 'Zm9vYg'],
    ['fooba', 'Zm9vYmE'],
    ['foobar', 'Zm9vYmFy'],
  ])('"%s" is "%s" in base 64', (plain, text) => {
    expect(toBase64url(new TextEncoder().encode(plain))).toBe(text);
  });

  test.each(['Zg==', 'Zh', 'Zm9vY', 'Zm 9v', 'Zm+v', 'Zm/v'])('"%s" is no such base 64', (text) => {
    expect(fromBase64url(text)).toEqual({ ok: false, error: 'NOT_BASE64URL' });
  });

  test.each([
    [null, 'NOT_ED25519'],
    [{ kty: 'OKP', crv: 'Ed448', x }, 'NOT_ED25519'],
    [{ kty: 'oct', k: x }, 'NOT_ED25519'],
    [{ kty: 'OKP', crv: 'Ed25519', x: x.slice(2) }, 'WRONG_KEY_LENGTH'],
    [{ kty: 'OKP', crv: 'Ed25519', x, d: x }, 'PRIVATE_KEY_SHOWN'],
  ])('the JWK %j is refused: %s', (given, error) => {
    expect(publicKeyFrom(given)).toEqual({ ok: false, error });
  });
});

describe('issuers', () => {
  test('a secure address is a did:web, which leads back to it', () => {
    const issuer = issuerAt('https://underlap.example:8443', ['issuers', 'a']);
    expect(issuer).toEqual({
      id: 'did:web:underlap.example%3A8443:issuers:a',
      url: 'https://underlap.example:8443/issuers/a',
    });
    expect(didWebAddress(issuer.id)).toEqual({ ok: true, value: `${issuer.url}/did.json` });
    expect(originOfIssuer(issuer.id)).toBe('https://underlap.example:8443');
  });

  test('an address that is not secure stands as it is', () => {
    const issuer = issuerAt('http://127.0.0.1:4173', ['issuers', 'a']);
    expect(issuer.id).toBe('http://127.0.0.1:4173/issuers/a');
    expect(originOfIssuer(issuer.id)).toBe('http://127.0.0.1:4173');
  });

  test.each([
    ['https://a.example/keys/1', 'did:web:a.example:issuers:x', true],
    ['https://a.example/keys/1', 'did:web:b.example:issuers:x', false],
    ['http://a.example/keys/1', 'did:web:a.example:issuers:x', false],
    ['https://a.example.evil/keys/1', 'did:web:a.example:issuers:x', false],
    ['did:web:a.example#1', 'did:web:a.example', false],
    ['nothing', 'nothing', false],
  ])('whether %s is a key of %s: %s', (key, issuer, is) => {
    expect(isKeyOf(key, issuer)).toBe(is);
  });
});

describe('laws', () => {
  test('bytes come back from base 58 and from base 64', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 80 }), (bytes) => {
        expect(fromBase58(toBase58(bytes))).toEqual({ ok: true, value: bytes });
        expect(fromBase64url(toBase64url(bytes))).toEqual({ ok: true, value: bytes });
      }),
    );
  });
});
