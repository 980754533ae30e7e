import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { fromBase58 } from '#engine/credential/base58.ts';
import { fromBase64url } from '#engine/credential/base64url.ts';
import { compactOf } from '#engine/credential/compact.ts';
import { fromMultikey, type PublicKey } from '#engine/credential/public-key.ts';
import {
  freshKey,
  isSigned,
  publicOf,
  signed,
  thumbprint,
} from '#server/certificates/signature.ts';

const hex = (text: string): Uint8Array => Uint8Array.from(Buffer.from(text, 'hex'));

describe('truth', () => {
  // RFC 8037 (2017), appendix A: read in public tests that quote it, not in the RFC itself.
  const key = {
    kty: 'OKP',
    crv: 'Ed25519',
    d: 'nWGxne_9WmC6hEr0kuwsxERJxWl7MmkZcDusAxyuf2A',
    x: '11qYAYKxCrfVS_7TyWQHOg7hcvPapiMlrwIaaPcHURo',
  } as const;
  const input = 'eyJhbGciOiJFZERTQSJ9.RXhhbXBsZSBvZiBFZDI1NTE5IHNpZ25pbmc';
  const signature =
    'hgyY0il_MGCjP0JzlnLWG1PPOt7-09PGcvMg3AIbQR6dWbhijcNR4ki4iylGjg5BhVsPt9g7sVvpAr_MuM0KAg';

  test('the example of appendix A.4 is signed to its published signature', () => {
    expect(compactOf(input, signed(key, input))).toBe(`${input}.${signature}`);
  });

  test('and verified, as appendix A.5 has it', () => {
    const bytes = fromBase64url(signature);
    const over = (text: string) =>
      bytes.ok && isSigned(publicOf(key), new TextEncoder().encode(text), bytes.value);
    expect(over(input)).toBe(true);
    expect(over(`${input.slice(0, -1)}d`)).toBe(false);
  });

  test('the thumbprint of its key is that of appendix A.3', () => {
    expect(thumbprint(publicOf(key))).toBe('kPrK_qmxVWaYVA9wwBF6Iuo3vVzz7TxHCTwXBygrS4k');
  });

  // Open Badges 3.0, ob_v3p0/impl/linked-data-proof-ob.html (1EdTech openbadges-specification, 2025-04-07).
  test('the signature of the published eddsa-rdfc-2022 example is right for its key', () => {
    const multikey = fromMultikey('z6MkjZRZv3aez3r18pB1RBFJR1kwUVJ5jHt92JmQwXbd5hwi');
    if (!multikey.ok) throw new Error(multikey.error);
    const bytes = fromBase64url(multikey.value.x);
    expect(bytes).toEqual({
      ok: true,
      value: hex('4bdeafde2ea8beefadd8c699b5c7e0704cf51154d52e17b20b71337ca04cc5a5'),
    });
    const over = hex(
      'd34009cea0dbc1ca941e09dc01c8c9d3e3ce3c5b853f67ee44698dcea10f5d19' +
        '87f65a76d40146205e3b3e06cb0fbd153f97f9ce70372390f52566bb7f9e0773',
    );
    const right = hex(
      'f7a017acf7d27983267ec362657c0fb08e955549f49dac5bf36a03c4f2c3a4f1' +
        'e3738a6c5ecd7ffba7135cb9cd754e6196f4b73082ea8df8e703c8ecd4333503',
    );
    const proof =
      'z5x9aCBYovW3CQCbKdNyhEm7ffYSw1YpEdPywQJoNbzDD2gkzQDKJ1sYKJaWvqZtkMtSbz35HcbgXVEDYHxCzgkCr';
    expect(fromBase58(proof.slice(1))).toEqual({ ok: true, value: right });
    expect(isSigned(multikey.value, over, right)).toBe(true);
    expect(isSigned(multikey.value, over.slice(1), right)).toBe(false);
  });
});

describe('laws', () => {
  test('a fresh key signs what its public half verifies, and no other', () => {
    const [own, other] = [freshKey(), freshKey()];
    const text = 'membrane';
    const made = signed(own, text);
    const by = (key: PublicKey, said = text) => isSigned(key, new TextEncoder().encode(said), made);
    expect(by(publicOf(own))).toBe(true);
    expect(by(publicOf(other))).toBe(false);
    expect(by(publicOf(own), 'membranes')).toBe(false);
    expect(isSigned(publicOf(own), new TextEncoder().encode(text), made.subarray(1))).toBe(false);
  });

  test('the name of a key is the SHA-256 of its parts in order', () => {
    const { x, ...rest } = publicOf(freshKey());
    const plain = `{"crv":"Ed25519","kty":"OKP","x":"${x}"}`;
    expect(thumbprint({ ...rest, x })).toBe(createHash('sha256').update(plain).digest('base64url'));
  });
});
