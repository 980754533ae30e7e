import { addPeriod, type IsoDate } from '#engine/calendar.ts';
import { renewalParts, type Scheme } from './scheme.ts';
import { standingIn, type Past, type Standing } from './standing.ts';

/** What of a scheme says when it is renewed. */
export type Renewable = Pick<Scheme, 'renewal'>;

/** When a certificate may be renewed; both days included. */
export type RenewalWindow = { readonly opens: IsoDate; readonly closes: IsoDate };

/** `until` is the last day of the certificate. */
export const renewalWindow = ({ renewal }: Renewable, until: IsoDate): RenewalWindow => ({
  opens: addPeriod(until, renewal.opens, -1),
  closes: renewal.closes ? addPeriod(until, renewal.closes) : until,
});

/** `late`: it holds no longer, and can be renewed still. `lapsed`: everything is examined anew. */
export const renewalPhases = ['current', 'due', 'late', 'lapsed'] as const;
export type RenewalPhase = (typeof renewalPhases)[number];

export function renewalPhase(scheme: Renewable, until: IsoDate, today: IsoDate): RenewalPhase {
  const { opens, closes } = renewalWindow(scheme, until);
  if (today < opens) return 'current';
  if (today <= until) return 'due';
  return today <= closes ? 'late' : 'lapsed';
}

/** Towards a renewal: what was sat outside its window is no part of it. It may be decided later. */
export function renewalStanding(
  scheme: Scheme,
  { tried, held }: Past,
  until: IsoDate,
  today: IsoDate,
): Standing {
  const { opens, closes } = renewalWindow(scheme, until);
  const inWindow = tried.filter(({ on }) => opens <= on && on <= closes);
  return standingIn(scheme, renewalParts(scheme), { tried: inWindow, held }, today);
}

/** The last day of a certificate that is granted for the first time. */
export const validUntil = ({ validity }: Scheme, decided: IsoDate): IsoDate =>
  addPeriod(decided, validity);

/**
 * Renewed in time it goes on from its old end, so that nobody loses by being early; renewed late, from the
 * day of the decision.
 */
export const renewedUntil = (scheme: Scheme, until: IsoDate, decided: IsoDate): IsoDate =>
  validUntil(scheme, decided > until ? decided : until);
