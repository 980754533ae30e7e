/**
 * The decision on a certificate: by somebody who neither trained nor examined the candidate, on complete
 * evidence, with a reason wherever it goes against the candidate. The rules say what is right; who holds
 * the office of a decider is the company's to say.
 */
import type { IsoDate } from '#engine/calendar.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { lacksIn, type Evidence, type Lack } from './evidence.ts';
import { renewedUntil, validUntil } from './renewal.ts';
import { renewalParts, type PartId, type Scheme, type SchemeId } from './scheme.ts';
import {
  keptFromDeciding,
  keptFromExamining,
  type Involvement,
  type KeptOut,
} from './separation.ts';
import type { Standing } from './standing.ts';

export const verdicts = ['grant', 'refuse', 'ask-for-more'] as const;
export type Verdict = (typeof verdicts)[number];

/** What is decided on. */
export type Application = {
  readonly scheme: Scheme;
  readonly candidate: string;
  /** The last day of the certificate that is to be renewed; nothing for a first one. */
  readonly renews: IsoDate | undefined;
  /**
   * `standingOf`, or `renewalStanding` for a renewal, on the day of the decision; for an appeal on that
   * of the first one, so that nobody loses by waiting for it.
   */
  readonly standing: Standing;
  readonly evidence: readonly Evidence[];
  readonly involved: readonly Involvement[];
};

export type Proposal = {
  readonly verdict: Verdict;
  readonly by: string;
  readonly on: IsoDate;
  /** A grant needs none. */
  readonly because: string;
  /** The parts of which more is asked. */
  readonly asks: readonly PartId[];
};

export type Decision = Proposal & {
  readonly scheme: SchemeId;
  readonly candidate: string;
  /** The last day of the certificate, where one is granted. */
  readonly until: IsoDate | undefined;
};

export type DecisionRefusal =
  | { readonly code: 'DECIDER_KEPT_OUT'; readonly why: KeptOut }
  | { readonly code: 'EXAMINER_KEPT_OUT'; readonly examiner: string; readonly why: KeptOut }
  | { readonly code: 'INCOMPLETE'; readonly lack: Lack }
  | { readonly code: 'NO_REASON' }
  | { readonly code: 'ASKS_NOTHING' }
  | { readonly code: 'UNKNOWN_PART'; readonly part: PartId };

/** The decision, or every rule that it breaks. */
export function decide(
  application: Application,
  proposal: Proposal,
): Result<Decision, readonly DecisionRefusal[]> {
  const { scheme, candidate, renews } = application;
  const refused = [
    ...deciderFaults(application, proposal),
    ...(proposal.verdict === 'grant' ? grantFaults(application) : reasonFaults(scheme, proposal)),
  ];
  if (refused.length > 0) return fault(refused);
  const granted = renews
    ? renewedUntil(scheme, renews, proposal.on)
    : validUntil(scheme, proposal.on);
  const until = proposal.verdict === 'grant' ? granted : undefined;
  return ok({ ...proposal, scheme: scheme.id, candidate, until });
}

/** Whoever the evidence names as examiner has examined, whether or not anybody entered it elsewhere. */
const involvedIn = ({ involved, evidence }: Application): readonly Involvement[] => [
  ...involved,
  ...evidence.flatMap(({ examiners, on }) =>
    examiners.map((person) => ({ person, as: 'examiner' as const, on })),
  ),
];

function deciderFaults(application: Application, { by, on }: Proposal): readonly DecisionRefusal[] {
  const { scheme, candidate } = application;
  const involved = involvedIn(application);
  return keptFromDeciding(scheme, { candidate, involved }, by, on).map((why) => ({
    code: 'DECIDER_KEPT_OUT',
    why,
  }));
}

/** Evidence counts only if its examiners were allowed to examine on that day. */
function grantFaults({
  scheme,
  candidate,
  renews,
  standing,
  evidence,
  involved,
}: Application): readonly DecisionRefusal[] {
  const parts = renews ? renewalParts(scheme) : scheme.parts;
  const lacks = lacksIn(parts, standing, evidence).map(
    (lack) => ({ code: 'INCOMPLETE', lack }) as const,
  );
  const kept = evidence.flatMap(({ examiners, on }) => {
    const known = involved.filter((one) => one.on <= on);
    return examiners.flatMap((examiner) =>
      keptFromExamining(scheme, { candidate, involved: known }, examiner, on).map(
        (why) => ({ code: 'EXAMINER_KEPT_OUT', examiner, why }) as const,
      ),
    );
  });
  return [...lacks, ...kept];
}

function reasonFaults(
  { parts }: Scheme,
  { verdict, because, asks }: Proposal,
): readonly DecisionRefusal[] {
  const known = new Set(parts.map(({ id }) => id));
  return [
    ...(because.trim() === '' ? [{ code: 'NO_REASON' } as const] : []),
    ...(verdict === 'ask-for-more' && asks.length === 0 ? [{ code: 'ASKS_NOTHING' } as const] : []),
    ...asks
      .filter((part) => !known.has(part))
      .map((part) => ({ code: 'UNKNOWN_PART', part }) as const),
  ];
}
