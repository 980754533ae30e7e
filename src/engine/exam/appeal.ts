import { addPeriod, type IsoDate } from '#engine/calendar.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import {
  decide,
  type Application,
  type Decision,
  type DecisionRefusal,
  type Proposal,
} from './decision.ts';

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
    ...appealFaults(application, first, appeal, proposal),
    ...(again.ok ? [] : again.error),
  ];
  if (!again.ok || refused.length > 0) return fault(refused);
  const outcome = proposal.verdict === first.verdict ? 'stands' : 'changed';
  return ok({ outcome, decision: again.value });
}

function appealFaults(
  { scheme, candidate }: Application,
  first: Decision,
  appeal: Appeal,
  proposal: Proposal,
): readonly AppealRefusal[] {
  const until = addPeriod(first.on, scheme.appeal);
  const isOther = first.scheme !== scheme.id || first.candidate !== candidate;
  const needsReason = proposal.verdict === 'grant' && proposal.because.trim() === '';
  return [
    ...(isOther ? [{ code: 'OF_ANOTHER_CASE' } as const] : []),
    ...(first.verdict === 'grant' ? [{ code: 'NOTHING_TO_APPEAL' } as const] : []),
    ...(appeal.by !== candidate ? [{ code: 'NOT_BY_CANDIDATE' } as const] : []),
    ...(appeal.on < first.on || proposal.on < appeal.on
      ? [{ code: 'BEFORE_DECISION' } as const]
      : []),
    ...(appeal.on > until ? [{ code: 'TOO_LATE', until } as const] : []),
    ...(proposal.by === first.by ? [{ code: 'SAME_DECIDER' } as const] : []),
    ...(needsReason ? [{ code: 'NO_REASON' } as const] : []),
  ];
}
