import { fromBase64url } from '#engine/credential/base64url.ts';
import type { PublicKey } from '#engine/credential/public-key.ts';

const name = 'Ed25519';

/** Ed25519 is in the Web Cryptography of current browsers; throws where it is not. */
export async function isSignedInBrowser(
  { x }: PublicKey,
  signed: Uint8Array<ArrayBuffer>,
  signature: Uint8Array<ArrayBuffer>,
): Promise<boolean> {
  const bytes = fromBase64url(x);
  if (!bytes.ok) return false;
  const key = await crypto.subtle.importKey('raw', bytes.value, { name }, false, ['verify']);
  return crypto.subtle.verify({ name }, key, signature, signed);
}
