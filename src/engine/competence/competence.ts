/** Where one person stands in every qualification, with the certificate that says so and how fresh the skill is. */
import { addPeriod, type IsoDate, type Period } from '#engine/calendar.ts';
import type { Scheme } from '#engine/exam/scheme.ts';
import {
  governing,
  type HeldCertificate,
  isHolding,
  type QualificationState,
  stateOn,
} from './qualification-state.ts';
import { type Fade, skillFade } from './skill-fade.ts';

/** Of a scheme, what the board goes by. */
export type Qualification = Pick<Scheme, 'id' | 'requires' | 'renewal' | 'covers'>;

/** What is known of somebody. */
export type Records = {
  /** By scheme. */
  readonly certificates: ReadonlyMap<string, readonly HeldCertificate[]>;
  /** Schemes of applications that are open. */
  readonly applied: ReadonlySet<string>;
  /** By method, the day of the last mock-up. */
  readonly practised: ReadonlyMap<string, IsoDate>;
  /** By scheme, the day on which a part of it was last sat. */
  readonly sat: ReadonlyMap<string, IsoDate>;
};

export type Competence = {
  readonly state: QualificationState;
  readonly certificate: HeldCertificate | undefined;
  readonly fade: Fade;
};

/** Practice so long ago no longer counts as being in training (chosen here). */
export const trainingSpan: Period = { count: 6, unit: 'months' };

/**
 * By scheme. In training is who applied, and who practises a wall that the scheme covers while they hold
 * what it requires; otherwise practice of one wall would show in every scheme that builds on it.
 */
export function competenceOf(
  qualifications: readonly Qualification[],
  records: Records,
  today: IsoDate,
): ReadonlyMap<string, Competence> {
  const held = (id: string) => records.certificates.get(id) ?? [];
  const byId = new Map(qualifications.map((one) => [one.id as string, one]));
  const holds = (id: string): boolean => isHolding(stateOn(today, byId.get(id), held(id), false));
  const since = addPeriod(today, trainingSpan, -1);
  return new Map(
    qualifications.map((one) => {
      const practised = lastOf([...one.covers.keys()].map((id) => records.practised.get(id)));
      const trains = one.requires.every(holds) && practised !== undefined && practised >= since;
      const inTraining = records.applied.has(one.id) || trains;
      return [
        one.id,
        {
          state: stateOn(today, one, held(one.id), inTraining),
          certificate: governing(held(one.id)),
          fade: skillFade(lastOf([practised, records.sat.get(one.id)]), today),
        },
      ];
    }),
  );
}

const lastOf = (days: readonly (IsoDate | undefined)[]): IsoDate | undefined =>
  days.reduce((last, day) => (day && (!last || day > last) ? day : last), undefined);
