/** Ed25519 (RFC 8032, 2017) by the platform's own cryptography. */
import {
  createHash,
  createPrivateKey,
  createPublicKey,
  generateKeyPairSync,
  type JsonWebKey,
  sign,
  verify,
} from 'node:crypto';
import { compactOf, signingInput } from '#engine/credential/compact.ts';
import { type PublicKey, thumbprinted } from '#engine/credential/public-key.ts';

export type PrivateKey = PublicKey & { readonly d: string };

export function freshKey(): PrivateKey {
  const { privateKey } = generateKeyPairSync('ed25519');
  const { x = '', d = '' } = privateKey.export({ format: 'jwk' });
  return { kty: 'OKP', crv: 'Ed25519', x, d };
}

export const publicOf = ({ kty, crv, x }: PrivateKey): PublicKey => ({ kty, crv, x });

/** RFC 7638 (2015): the same for whoever computes it, so it names the key. */
export const thumbprint = (key: PublicKey): string =>
  createHash('sha256').update(thumbprinted(key)).digest('base64url');

const asJwk = (key: PublicKey): JsonWebKey => ({ ...key });

export const signed = (key: PrivateKey, input: string): Uint8Array =>
  sign(null, Buffer.from(input), createPrivateKey({ key: asJwk(key), format: 'jwk' }));

/** Header and payload, signed, in compact form. */
export function signCompact(key: PrivateKey, header: object, payload: object): string {
  const input = signingInput(header, payload);
  return compactOf(input, signed(key, input));
}

export const isSigned = (key: PublicKey, signed: Uint8Array, signature: Uint8Array): boolean =>
  verify(null, signed, createPublicKey({ key: asJwk(key), format: 'jwk' }), signature);
