/**
 * An Ed25519 public key as a JWK (RFC 8037, 2017) and as a Multikey, which is also what stands in a
 * did:key: `z`, then in base 58 the bytes ed 01 and the 32 of the key (the did:key method of the W3C
 * credentials community group).
 */
import { fault, ok, type Result } from '#engine/result.ts';
import { fromBase58, toBase58 } from './base58.ts';
import { fromBase64url, toBase64url } from './base64url.ts';

export type PublicKey = { readonly kty: 'OKP'; readonly crv: 'Ed25519'; readonly x: string };

export type PublicKeyFault =
  'NOT_ED25519' | 'PRIVATE_KEY_SHOWN' | 'NOT_BASE58' | 'WRONG_KEY_LENGTH';

const keyBytes = 32;
const ed25519 = [0xed, 0x01] as const;

/** The door for a JWK from outside. One with a private part is refused, whatever else it says. */
export function publicKeyFrom(given: unknown): Result<PublicKey, PublicKeyFault> {
  if (typeof given !== 'object' || given === null) return fault('NOT_ED25519');
  const { kty, crv, x } = given as Readonly<Record<string, unknown>>;
  if ('d' in given) return fault('PRIVATE_KEY_SHOWN');
  if (kty !== 'OKP' || crv !== 'Ed25519' || typeof x !== 'string') return fault('NOT_ED25519');
  const bytes = fromBase64url(x);
  if (!bytes.ok || bytes.value.length !== keyBytes) return fault('WRONG_KEY_LENGTH');
  return ok({ kty, crv, x });
}

export function toMultikey({ x }: PublicKey): string {
  const bytes = fromBase64url(x);
  return `z${toBase58(Uint8Array.from([...ed25519, ...(bytes.ok ? bytes.value : [])]))}`;
}

export function fromMultikey(text: string): Result<PublicKey, PublicKeyFault> {
  if (!text.startsWith('z')) return fault('NOT_BASE58');
  const bytes = fromBase58(text.slice(1));
  if (!bytes.ok) return bytes;
  const [first, second, ...key] = bytes.value;
  if (first !== ed25519[0] || second !== ed25519[1]) return fault('NOT_ED25519');
  if (key.length !== keyBytes) return fault('WRONG_KEY_LENGTH');
  return ok({ kty: 'OKP', crv: 'Ed25519', x: toBase64url(Uint8Array.from(key)) });
}

/** What a thumbprint of the key is the SHA-256 of (RFC 7638, 2015, section 3). */
export const thumbprinted = ({ crv, kty, x }: PublicKey): string => JSON.stringify({ crv, kty, x });
