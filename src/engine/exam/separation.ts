/**
 * Who has to keep out: whoever trained a candidate does not examine or certify them, and whoever examined
 * them does not certify them, until so long after the last time as the scheme says (ISO/IEC 17024:2012, 5.2
 * and 9.4, as remembered; not read in the standard).
 */
import { addPeriod, type IsoDate, type Period } from '#engine/calendar.ts';
import type { Scheme } from './scheme.ts';

/** What somebody had to do with the candidate, and when for the last time. */
export type Involvement = {
  readonly person: string;
  readonly as: 'trainer' | 'examiner';
  readonly on: IsoDate;
};

export type KeptOut =
  | { readonly code: 'IS_CANDIDATE' }
  /** `from`: the first day on which they no longer need to keep out for this. */
  | { readonly code: 'TRAINED' | 'EXAMINED'; readonly from: IsoDate };

type Case = {
  readonly candidate: string;
  readonly involved: readonly Involvement[];
};

/** Why somebody may not examine the candidate on that day; nothing where they may. */
export const keptFromExamining = (
  { separation }: Scheme,
  { candidate, involved }: Case,
  person: string,
  on: IsoDate,
): readonly KeptOut[] => [
  ...own(candidate, person),
  ...after('TRAINED', 'trainer', involved, person, separation.trainedExamines, on),
];

/** Why somebody may not decide on the candidate on that day; nothing where they may. */
export const keptFromDeciding = (
  { separation }: Scheme,
  { candidate, involved }: Case,
  person: string,
  on: IsoDate,
): readonly KeptOut[] => [
  ...own(candidate, person),
  ...after('TRAINED', 'trainer', involved, person, separation.trainedDecides, on),
  ...after('EXAMINED', 'examiner', involved, person, separation.examinedDecides, on),
];

const own = (candidate: string, person: string): readonly KeptOut[] =>
  candidate === person ? [{ code: 'IS_CANDIDATE' }] : [];

function after(
  code: 'TRAINED' | 'EXAMINED',
  as: Involvement['as'],
  involved: readonly Involvement[],
  person: string,
  period: Period,
  on: IsoDate,
): readonly KeptOut[] {
  const from = involved
    .filter((one) => one.person === person && one.as === as)
    .map((one) => addPeriod(one.on, period))
    .toSorted()
    .at(-1);
  return from !== undefined && from > on ? [{ code, from }] : [];
}
