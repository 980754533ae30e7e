import { addPeriod, daysBetween, type IsoDate, type Period } from '#engine/calendar.ts';

/** What the records say of a certificate, whatever day it is. */
export const standings = ['in-force', 'suspended', 'withdrawn'] as const;
export type Standing = (typeof standings)[number];

export const isStanding = (value: string): value is Standing =>
  standings.some((standing) => standing === value);

/** What a certificate is on a day. Only `current` and `due` hold. */
export const certificateStates = ['current', 'due', 'expired', 'suspended', 'withdrawn'] as const;
export type CertificateState = (typeof certificateStates)[number];

export const holdsNow = (state: CertificateState): state is 'current' | 'due' =>
  state === 'current' || state === 'due';

export type Certificate = {
  readonly standing: Standing;
  /** The last day on which it holds. */
  readonly until: IsoDate;
  /** So long before its end it may be renewed. */
  readonly renewalOpens: Period;
  /** Whether another goes on from it, so that nothing is due any more. */
  readonly isRenewed: boolean;
};

/**
 * A withdrawn certificate stays withdrawn, and one that ended while it was suspended has ended: lifting
 * the suspension would not bring it back.
 */
export function certificateState(certificate: Certificate, today: IsoDate): CertificateState {
  const { standing, until, renewalOpens, isRenewed } = certificate;
  if (standing === 'withdrawn') return 'withdrawn';
  if (today > until) return 'expired';
  if (standing === 'suspended') return 'suspended';
  return !isRenewed && today >= addPeriod(until, renewalOpens, -1) ? 'due' : 'current';
}

/** Within so many days of its end, the nearest first; `ended` is after it. */
export const reminders = ['ended', 0, 30, 60] as const;
export type Reminder = (typeof reminders)[number];

/** Which reminder is the one of a day; undefined more than 60 days ahead. */
export function reminderOn(until: IsoDate, today: IsoDate): Reminder | undefined {
  const left = daysBetween(today, until);
  if (left < 0) return 'ended';
  return ([0, 30, 60] as const).find((days) => left <= days);
}
