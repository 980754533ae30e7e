/**
 * Checks a credential file in the browser, by the keys that came with the page: nothing is sent, so it works
 * without signal.
 */
import { type CertificateState, holdsNow } from '#engine/certificate/state.ts';
import { credentialId } from '#engine/credential/credential.ts';
import { originOfIssuer } from '#engine/credential/issuer.ts';
import type { PublicKey } from '#engine/credential/public-key.ts';
import { type PublishedState, type Refusal, verifyCredential } from '#engine/credential/verify.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { isSignedInBrowser } from './browser-signature.ts';
import { holderIn } from './file-says.ts';

export type Known = {
  readonly origin: string;
  /** Of the certificate whose page this is. */
  readonly address: string;
  readonly state: CertificateState;
  readonly issue: number;
  readonly keys: readonly { readonly kid: string; readonly key: PublicKey }[];
  /** Seconds since 1970 in UTC. */
  readonly now: number;
};

export type CheckFault = Refusal | 'OTHER_CERTIFICATE' | 'CANNOT_CHECK';

const publishedState = (state: CertificateState): PublishedState =>
  holdsNow(state) || state === 'expired' ? 'in-force' : state;

/** For whom it was made, or why not to trust it. */
export async function checkFile(text: string, known: Known): Promise<Result<string, CheckFault>> {
  if (globalThis.crypto?.subtle === undefined) return fault('CANNOT_CHECK');
  try {
    const verifier = {
      isTrusted: (issuer: string) => originOfIssuer(issuer) === known.origin,
      keyOf: (kid: string) => known.keys.find((one) => one.kid === kid)?.key,
      isSigned: isSignedInBrowser,
      now: known.now,
    };
    const alone = await verifyCredential(text, verifier);
    if (!alone.ok) return alone;
    const id = String(alone.value.credential['id']);
    if (!id.startsWith(`${known.address}#`)) return fault('OTHER_CERTIFICATE');
    const isLast = id === credentialId(known.address, known.issue);
    const state = isLast ? publishedState(known.state) : 'replaced';
    const now = await verifyCredential(text, { ...verifier, state });
    return now.ok ? ok(holderIn(now.value.credential)) : now;
  } catch {
    return fault('CANNOT_CHECK');
  }
}
