/** Ed25519 (RFC 8032, 2017) by the platform's own cryptography. */
import {
  createHash,
  createPrivateKey,
  createPublicKey,
  generateKeyPairSync,
  type JsonWebKey,
  type KeyObject,
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

/** A key as the platform takes it: made once for each, for as long as somebody holds it. */
function madeOnce(make: (jwk: JsonWebKey) => KeyObject): (key: PublicKey) => KeyObject {
  const known = new WeakMap<PublicKey, KeyObject>();
  return (key) => {
    const made = known.get(key) ?? make({ ...key });
    known.set(key, made);
    return made;
  };
}

const signingKey = madeOnce((key) => createPrivateKey({ key, format: 'jwk' }));
const checkingKey = madeOnce((key) => createPublicKey({ key, format: 'jwk' }));

export const signed = (key: PrivateKey, input: string): Uint8Array =>
  sign(null, Buffer.from(input), signingKey(key));

/** Header and payload, signed, in compact form. */
export function signCompact(key: PrivateKey, header: object, payload: object): string {
  const input = signingInput(header, payload);
  return compactOf(input, signed(key, input));
}

export const isSigned = (key: PublicKey, signed: Uint8Array, signature: Uint8Array): boolean =>
  verify(null, signed, checkingKey(key), signature);
