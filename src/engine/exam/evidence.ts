import type { IsoDate } from '#engine/calendar.ts';
import type { Rational } from '#engine/measure/rational.ts';
import type { Part, PartId, SchemeId } from './scheme.ts';
import type { Standing } from './standing.ts';

/** What stands behind a passed part. */
export type Evidence = {
  readonly part: PartId;
  readonly on: IsoDate;
  /** Whether its result was gone through and released. */
  readonly isReleased: boolean;
  readonly examiners: readonly string[];
  /** Share of witness points on which two examiners judged alike. */
  readonly agreement: Rational | undefined;
};

export type Lack =
  | { readonly code: 'CERTIFICATE'; readonly scheme: SchemeId }
  | {
      readonly code: 'NOT_PASSED' | 'NO_EVIDENCE' | 'NOT_RELEASED' | 'EXAMINERS' | 'AGREEMENT';
      readonly part: PartId;
    };

/** What is missing for a certificate on these parts; nothing where the evidence is complete. */
export const lacksIn = (
  parts: readonly Part[],
  standing: Standing,
  evidence: readonly Evidence[],
): readonly Lack[] => [
  ...standing.lacks.map((scheme) => ({ code: 'CERTIFICATE', scheme }) as const),
  ...parts.flatMap((part) => lacksOf(part, standing, evidence)),
];

function lacksOf(part: Part, standing: Standing, evidence: readonly Evidence[]): readonly Lack[] {
  const state = standing.parts.find((each) => each.part === part.id)?.state;
  const lack = (code: Exclude<Lack['code'], 'CERTIFICATE'>): Lack => ({ code, part: part.id });
  if (state?.kind !== 'passed') return [lack('NOT_PASSED')];
  const found = evidence.find((each) => each.part === part.id && each.on === state.on);
  if (!found) return [lack('NO_EVIDENCE')];
  const lacks = found.isReleased ? [] : [lack('NOT_RELEASED')];
  if (part.kind !== 'hands-on') return lacks;
  if (new Set(found.examiners).size < part.examiners) lacks.push(lack('EXAMINERS'));
  const isAgreed = !part.agreement || found.agreement?.gte(part.agreement.value);
  if (!isAgreed) lacks.push(lack('AGREEMENT'));
  return lacks;
}
