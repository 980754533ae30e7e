import { addPeriod, type IsoDate } from '#engine/calendar.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import {
  decide,
  type Application,
  type Decision,
  type DecisionRefusal,
  type Proposal,
} from './decision.ts';
import type { Scheme } from './scheme.ts';

export type AppealRefusal =
  | DecisionRefusal
  | { readonly code: 'NOTHING_TO_APPEAL' }
  | { readonly code: 'OF_ANOTHER_CASE' }
  | { readonly code: 'NOT_BY_CANDIDATE' }
  | { readonly code: 'BEFORE_DECISION' }
  | { readonly code: 'TOO_LATE'; readonly until: IsoDate }
  | { readonly code: 'SAME_DECIDER' };

export type Appeal = { readonly by: string; readonly on: IsoDate };

export type AppealOutcome = {
  readonly outcome: 'stands' | 'changed';
  readonly decision: Decision;
};

/**
 * Decides again, by another person and by the same rules. The first decision stands where the verdict is
 * the same; a reason is asked for either way.
 */
export function decideAppeal(
  application: Application,
  first: Decision,
  appeal: Appeal,
  proposal: Proposal,
): Result<AppealOutcome, readonly AppealRefusal[]> {
  const again = decide(application, proposal);
  const refused = [
    ...appealFaults(application, first, appeal),
    ...secondFaults(first, appeal, proposal),
    ...(again.ok ? [] : again.error),
  ];
  if (!again.ok || refused.length > 0) return fault(refused);
  const outcome = proposal.verdict === first.verdict ? 'stands' : 'changed';
  return ok({ outcome, decision: again.value });
}

/** Whether a decision can be appealed against so, whoever decides on it then. */
export function appealFaults(
  { scheme, candidate }: Pick<Application, 'scheme' | 'candidate'>,
  first: Pick<Decision, 'scheme' | 'candidate' | 'verdict' | 'on'>,
  appeal: Appeal,
): readonly AppealRefusal[] {
  const until = appealUntil(scheme, first.on);
  const isOther = first.scheme !== scheme.id || first.candidate !== candidate;
  return [
    ...(isOther ? [{ code: 'OF_ANOTHER_CASE' } as const] : []),
    ...(first.verdict === 'grant' ? [{ code: 'NOTHING_TO_APPEAL' } as const] : []),
    ...(appeal.by !== candidate ? [{ code: 'NOT_BY_CANDIDATE' } as const] : []),
    ...(appeal.on < first.on ? [{ code: 'BEFORE_DECISION' } as const] : []),
    ...(appeal.on > until ? [{ code: 'TOO_LATE', until } as const] : []),
  ];
}

/** The last day on which a decision of that day can be appealed against. */
export const appealUntil = ({ appeal }: Pick<Scheme, 'appeal'>, decided: IsoDate): IsoDate =>
  addPeriod(decided, appeal);

function secondFaults(
  first: Decision,
  appeal: Appeal,
  proposal: Proposal,
): readonly AppealRefusal[] {
  const needsReason = proposal.verdict === 'grant' && proposal.because.trim() === '';
  return [
    ...(proposal.on < appeal.on ? [{ code: 'BEFORE_DECISION' } as const] : []),
    ...(proposal.by === first.by ? [{ code: 'SAME_DECIDER' } as const] : []),
    ...(needsReason ? [{ code: 'NO_REASON' } as const] : []),
  ];
}
