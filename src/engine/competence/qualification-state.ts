/**
 * Where somebody stands in a qualification on a day, from the certificates of its scheme and from whether
 * they practise for it. Of several certificates the one granted last speaks, for it is the latest decision.
 */
import { addPeriod, type IsoDate } from '#engine/calendar.ts';
import { renewalPhase, renewalWindow, type Renewable } from '#engine/exam/renewal.ts';

export const qualificationStates = [
  'none',
  'in-training',
  'current',
  'due',
  'lapsed',
  'suspended',
  'withdrawn',
] as const;
export type QualificationState = (typeof qualificationStates)[number];

/** In these one may be sent to work that asks for it. */
export const holdingStates = ['current', 'due'] as const satisfies readonly QualificationState[];

export const certificateStates = ['in-force', 'suspended', 'withdrawn'] as const;
export type CertificateState = (typeof certificateStates)[number];

export type HeldCertificate = {
  readonly id: string;
  readonly state: CertificateState;
  readonly grantedOn: IsoDate;
  /** The last day. */
  readonly validUntil: IsoDate;
  /** Another certificate goes on from it. */
  readonly isReplaced: boolean;
};

/** The certificate that speaks: of those not replaced the one granted last, by id among those of a day. */
export const governing = (held: readonly HeldCertificate[]): HeldCertificate | undefined =>
  held
    .filter(({ isReplaced }) => !isReplaced)
    .reduce<HeldCertificate | undefined>(
      (last, one) => (last && rank(last) > rank(one) ? last : one),
      undefined,
    );

const rank = ({ grantedOn, id }: HeldCertificate): string => `${grantedOn} ${id}`;

/** Without its scheme nobody knows when renewal opens: the certificate is current to its last day. */
export function stateOn(
  today: IsoDate,
  scheme: Renewable | undefined,
  held: readonly HeldCertificate[],
  isInTraining: boolean,
): QualificationState {
  const speaks = governing(held);
  if (!speaks) return isInTraining ? 'in-training' : 'none';
  if (speaks.state === 'withdrawn') return 'withdrawn';
  if (speaks.validUntil < today) return 'lapsed';
  if (speaks.state === 'suspended') return 'suspended';
  return scheme && renewalPhase(scheme, speaks.validUntil, today) === 'due' ? 'due' : 'current';
}

export const isHolding = (state: QualificationState): boolean =>
  (holdingStates as readonly QualificationState[]).includes(state);

/**
 * A certificate that holds today is due where its last day is this one or earlier. Months differ in length,
 * so more than one last day may open renewal on the same day.
 */
export function dueThrough(scheme: Renewable, today: IsoDate): IsoDate {
  const after = (day: IsoDate): IsoDate => addPeriod(day, { count: 1, unit: 'days' });
  let last = addPeriod(today, scheme.renewal.opens);
  while (renewalWindow(scheme, after(last)).opens <= today) last = after(last);
  return last;
}
