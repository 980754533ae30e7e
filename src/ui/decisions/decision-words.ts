import type { Verdict } from '#engine/exam/decision.ts';
import type { Lack } from '#engine/exam/evidence.ts';
import type { KeptOut } from '#engine/exam/separation.ts';
import { keptOutWords } from '#ui/checks/examine-words.ts';
import { say } from '#ui/language/language.svelte.ts';
import { m } from '#ui/messages/generated/messages.js';
import type { PartTitles } from './evidence.ts';
import { plainDay } from './plain-day.ts';

export const verdictWords: Readonly<Record<Verdict, () => string>> = {
  grant: m.verdict_grant,
  refuse: m.verdict_refuse,
  'ask-for-more': m.verdict_more,
};

export const titleOf = (titles: PartTitles, part: string): string => {
  const title = titles[part];
  return title ? say(title) : part;
};

/** What is missing for a certificate, by the part that it is missing in. */
export function lackWords(lack: Lack, titles: PartTitles): string {
  if (lack.code === 'CERTIFICATE') return m.lack_certificate({ scheme: lack.scheme });
  const part = titleOf(titles, lack.part);
  const words = {
    NOT_PASSED: m.lack_not_passed,
    NO_EVIDENCE: m.lack_no_evidence,
    NOT_RELEASED: m.lack_not_released,
    EXAMINERS: m.lack_examiners,
    AGREEMENT: m.lack_agreement,
  };
  return words[lack.code]({ part });
}

export type DecideFault = {
  readonly code: string;
  readonly lack?: Lack;
  readonly why?: KeptOut;
  readonly until?: string;
};

const plain: Readonly<Record<string, () => string>> = {
  NO_VERDICT: m.refused_no_verdict,
  NO_REASON: m.refused_no_reason,
  ASKS_NOTHING: m.refused_asks_nothing,
  UNKNOWN_PART: m.refused_asks_nothing,
  CLOSED: m.refused_closed,
  UNDER_APPEAL: m.refused_under_appeal,
  NO_APPEAL: m.refused_no_appeal,
  APPEALED_BEFORE: m.refused_appealed_before,
  TOO_LONG: m.refused_too_long,
  SAME_DECIDER: m.refused_same_decider,
  NOTHING_TO_APPEAL: m.refused_nothing_to_appeal,
  NOT_BY_CANDIDATE: m.refused_not_by_candidate,
  BEFORE_DECISION: m.refused_before,
};

/** Why a decision or an appeal was not taken. */
export function decideFaultWords(fault: DecideFault, titles: PartTitles): string {
  const { code, lack, why, until } = fault;
  if (code === 'INCOMPLETE' && lack) return lackWords(lack, titles);
  if (code === 'EXAMINER_KEPT_OUT' && why) return m.refused_examiner({ why: keptOutWords(why) });
  if (why) return keptOutWords(why);
  if (code === 'TOO_LATE' && until) return m.refused_too_late({ until: plainDay(until) });
  return (plain[code] ?? m.refused_other)();
}
