/**
 * The header of a VC-JWT of this kind: `alg`, `kid`, `typ`, and nothing else, for whatever else a header
 * may say (a key, an address to fetch one from, that the payload is not encoded) is a way to make a
 * verifier trust what it should not.
 */
import { fault, ok, type Result } from '#engine/result.ts';

export const algorithm = 'EdDSA';

export type Header = { readonly alg: typeof algorithm; readonly kid: string; readonly typ: 'JWT' };

export const headerFor = (kid: string): Header => ({ alg: algorithm, kid, typ: 'JWT' });

export type HeaderFault =
  'WRONG_ALGORITHM' | 'WRONG_TYPE' | 'NO_KEY_NAMED' | 'PRIVATE_KEY_SHOWN' | 'UNKNOWN_HEADER';

const known: readonly string[] = ['alg', 'kid', 'typ'];

export function headerFrom(given: Readonly<Record<string, unknown>>): Result<Header, HeaderFault> {
  const { alg, kid, typ, jwk } = given;
  // The one algorithm is fixed here and never taken from what is to be checked.
  if (alg !== algorithm) return fault('WRONG_ALGORITHM');
  if (typeof jwk === 'object' && jwk !== null && 'd' in jwk) return fault('PRIVATE_KEY_SHOWN');
  if (Object.keys(given).some((name) => !known.includes(name))) return fault('UNKNOWN_HEADER');
  if (typ !== undefined && typ !== 'JWT') return fault('WRONG_TYPE');
  if (typeof kid !== 'string' || kid === '') return fault('NO_KEY_NAMED');
  return ok(headerFor(kid));
}
