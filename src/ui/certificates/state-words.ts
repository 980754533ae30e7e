import type { CertificateState } from '#engine/certificate/state.ts';
import { language } from '#ui/language/language.svelte.ts';
import { m } from '#ui/messages/generated/messages.js';

/** What a certificate is, and for an address that nobody has, what it is not. */
export type ShownState = CertificateState | 'unknown';

export const stateWords: Readonly<Record<ShownState, () => string>> = {
  current: m.cert_state_current,
  due: m.cert_state_due,
  expired: m.cert_state_expired,
  suspended: m.cert_state_suspended,
  withdrawn: m.cert_state_withdrawn,
  unknown: m.cert_state_unknown,
};

/** A day of the records, such as `2033-05-01`, which is the same day everywhere. */
export const certificateDay = (day: string): string =>
  new Date(`${day.slice(0, 10)}T00:00:00Z`).toLocaleDateString(language.locale, {
    dateStyle: 'long',
    timeZone: 'UTC',
  });

/** The state as a sentence that says whether it holds today. */
export function stateSentence(state: ShownState, since: string | null): string {
  const day = since ? certificateDay(since) : '';
  if (state === 'suspended') return m.cert_says_suspended({ day });
  if (state === 'withdrawn') return m.cert_says_withdrawn({ day });
  return {
    current: m.cert_says_current,
    due: m.cert_says_due,
    expired: m.cert_says_expired,
    unknown: m.cert_says_unknown,
  }[state]();
}
