/**
 * Whether a credential is what it says: its form, its signature, its claims, its days and its state, in
 * the order in which Open Badges 3.0 asks for them. The cryptography and the keys come in as arguments.
 */
import { fault, ok, type Result } from '#engine/result.ts';
import { differingClaims, idOf } from './claims.ts';
import { type Compact, compactFrom } from './compact.ts';
import { headerFrom, type HeaderFault } from './header.ts';
import { secondsOf } from './instant.ts';
import { isKeyOf } from './issuer.ts';
import type { PublicKey } from './public-key.ts';
import { propertyFaultsOf, type PropertyFault } from './required.ts';

export type Refusal =
  | 'NOT_COMPACT'
  | HeaderFault
  | PropertyFault
  | 'WRONG_ISSUER'
  | 'KEY_OF_ANOTHER'
  | 'UNKNOWN_KEY'
  | 'WRONG_SIGNATURE'
  | 'CLAIM_DIFFERS'
  | 'NOT_YET_VALID'
  | 'EXPIRED'
  | 'SUSPENDED'
  | 'WITHDRAWN'
  | 'REPLACED';

/** What the issuer says of it today, where it was asked; `replaced` by another issue of the same. */
export const publishedStates = ['in-force', 'suspended', 'withdrawn', 'replaced'] as const;
export type PublishedState = (typeof publishedStates)[number];

export type Verifier = {
  readonly isTrusted: (issuer: string) => boolean;
  readonly keyOf: (kid: string) => PublicKey | undefined;
  /** Whether a signature by Ed25519 (RFC 8032, 2017) is right. */
  readonly isSigned: (
    key: PublicKey,
    signed: Uint8Array<ArrayBuffer>,
    signature: Uint8Array<ArrayBuffer>,
  ) => boolean | Promise<boolean>;
  /** Seconds since 1970 in UTC. */
  readonly now: number;
  /** Left out where nobody could be asked: then it is right as far as it goes by itself. */
  readonly state?: PublishedState;
};

export type Verified = {
  readonly credential: Readonly<Record<string, unknown>>;
  readonly kid: string;
};

export async function verifyCredential(
  text: string,
  verifier: Verifier,
): Promise<Result<Verified, Refusal>> {
  const compact = compactFrom(text);
  if (!compact.ok) return compact;
  const { payload } = compact.value;
  const header = headerFrom(compact.value.header);
  if (!header.ok) return header;
  const { kid } = header.value;
  const [property] = propertyFaultsOf(payload);
  if (property) return fault(property);
  const unsigned = await signatureFault(compact.value, kid, verifier);
  if (unsigned) return fault(unsigned);
  if (differingClaims(payload).length > 0) return fault('CLAIM_DIFFERS');
  const now = dayFault(payload, verifier.now) ?? stateFault(verifier.state);
  return now ? fault(now) : ok({ credential: payload, kid });
}

async function signatureFault(
  { payload, signed, signature }: Compact,
  kid: string,
  { isTrusted, keyOf, isSigned }: Verifier,
): Promise<Refusal | undefined> {
  const issuer = String(idOf(payload['issuer']));
  if (!isTrusted(issuer)) return 'WRONG_ISSUER';
  if (!isKeyOf(kid, issuer)) return 'KEY_OF_ANOTHER';
  const key = keyOf(kid);
  if (!key) return 'UNKNOWN_KEY';
  return (await isSigned(key, signed, signature)) ? undefined : 'WRONG_SIGNATURE';
}

/** Both ends included. */
function dayFault(payload: Compact['payload'], now: number): Refusal | undefined {
  const { validFrom, validUntil } = payload;
  if (now < (secondsOf(validFrom) ?? Infinity)) return 'NOT_YET_VALID';
  return now > (secondsOf(validUntil) ?? Infinity) ? 'EXPIRED' : undefined;
}

const stateRefusals = {
  'in-force': undefined,
  suspended: 'SUSPENDED',
  withdrawn: 'WITHDRAWN',
  replaced: 'REPLACED',
} as const satisfies Readonly<Record<PublishedState, Refusal | undefined>>;

const stateFault = (state: PublishedState | undefined): Refusal | undefined =>
  state && stateRefusals[state];
