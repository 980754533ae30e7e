/**
 * Checks a credential file by what stands in it and the keys kept here, as far as that goes: whether it was
 * suspended, withdrawn or issued anew since, only the server can tell.
 */
import { compactFrom } from '#engine/credential/compact.ts';
import { originOfIssuer } from '#engine/credential/issuer.ts';
import { type Refusal, verifyCredential } from '#engine/credential/verify.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { isSignedInBrowser } from './browser-signature.ts';
import { type FileSays, fileSays } from './file-says.ts';
import type { KeptKeys } from './kept-keys.ts';

export type Days = 'within' | 'over' | 'early';

export type CheckedAlone = { readonly days: Days; readonly says: FileSays };

export type AloneFault = Exclude<Refusal, DayRefusal> | 'NO_KEYS' | 'CANNOT_CHECK';

type DayRefusal = keyof typeof outside;

const outside = { NOT_YET_VALID: 'early', EXPIRED: 'over' } as const;

const isOfDays = (refusal: Refusal): refusal is DayRefusal => refusal in outside;

/** `now` in seconds since 1970 in UTC. */
export async function checkAlone(
  text: string,
  kept: KeptKeys | undefined,
  now: number,
): Promise<Result<CheckedAlone, AloneFault>> {
  if (!kept) return fault('NO_KEYS');
  const { origin, keys } = kept;
  if (globalThis.crypto?.subtle === undefined) return fault('CANNOT_CHECK');
  try {
    const checked = await verifyCredential(text, {
      isTrusted: (issuer) => originOfIssuer(issuer) === origin,
      keyOf: (kid) => keys.find(({ id }) => kid === `${origin}/keys/${id}`)?.key,
      isSigned: isSignedInBrowser,
      now,
    });
    if (checked.ok) return ok({ days: 'within', says: fileSays(checked.value.credential) });
    if (!isOfDays(checked.error)) return fault(checked.error);
    // The days are looked at last: it is signed here, and may be read.
    const compact = compactFrom(text);
    if (!compact.ok) return compact;
    return ok({ days: outside[checked.error], says: fileSays(compact.value.payload) });
  } catch {
    return fault('CANNOT_CHECK');
  }
}
