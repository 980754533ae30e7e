import { instantWords } from '#ui/attempts/instant-words.ts';
import { m } from '#ui/messages/generated/messages.js';
import type { AloneFault } from './check-alone.ts';
import type { CheckFault } from './check-file.ts';
import type { KeptKeys } from './kept-keys.ts';

const own: Readonly<Partial<Record<CheckFault, () => string>>> = {
  CANNOT_CHECK: m.cert_check_cannot,
  OTHER_CERTIFICATE: m.cert_check_other,
  WRONG_SIGNATURE: m.cert_check_signature,
  WRONG_ALGORITHM: m.cert_check_signature,
  CLAIM_DIFFERS: m.cert_check_signature,
  WRONG_ISSUER: m.cert_check_issuer,
  KEY_OF_ANOTHER: m.cert_check_issuer,
  UNKNOWN_KEY: m.cert_check_issuer,
  NOT_YET_VALID: m.cert_check_days,
  EXPIRED: m.cert_check_days,
  SUSPENDED: m.cert_check_stopped,
  WITHDRAWN: m.cert_check_stopped,
  REPLACED: m.cert_check_replaced,
};

/** Why not to trust a file; what is left is that it has not the form. */
export const checkWords = (code: CheckFault): string => (own[code] ?? m.cert_check_form)();

/** The same where nobody could be asked: a key may be newer than those kept here. */
export function aloneWords(
  code: AloneFault,
  keys: KeptKeys | undefined,
): { readonly label: string; readonly cure: string } {
  if (code === 'NO_KEYS') return { label: m.check_unable(), cure: m.check_keys_none() };
  if (code === 'CANNOT_CHECK') return { label: m.check_unable(), cure: m.cert_check_cannot() };
  const label = m.cert_check_wrong();
  return code === 'UNKNOWN_KEY' && keys
    ? { label, cure: m.check_unknown_key({ when: instantWords(keys.at) }) }
    : { label, cure: checkWords(code) };
}
