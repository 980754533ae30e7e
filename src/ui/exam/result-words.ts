import type { Text } from '#engine/text.ts';
import type { Verdict } from '#engine/written/verdict.ts';
import { language } from '#ui/language/language.svelte.ts';
import { m } from '#ui/messages/generated/messages.js';
import { outcomeLabels } from '#ui/written/verdict-words.ts';

/** A fault on a wall is told by its reason alone. */
export type ShownVerdict =
  | Exclude<Verdict, { readonly kind: 'find-fault' }>
  | (Pick<Verdict, 'outcome' | 'credit' | 'point'> & {
      readonly kind: 'find-fault';
      readonly because: Text;
    });

export type MarkedLine = {
  readonly item: string;
  readonly ask?: Text | undefined;
  readonly unit?: Text | undefined;
  readonly verdict?: ShownVerdict | undefined;
  readonly leftOut?: 'retired' | 'gone' | 'changed' | undefined;
};

export type MarkedDetail = { readonly lines: readonly MarkedLine[]; readonly passMark: number };

const outcomes: Readonly<Record<string, () => string>> = {
  passed: m.result_passed,
  failed: m.result_failed,
  void: m.result_void,
};

export const outcomeWords = (outcome: string): string => (outcomes[outcome] ?? m.result_none)();

export const shareWords = (share: number): string =>
  share.toLocaleString(language.locale, { style: 'percent', maximumFractionDigits: 1 });

/** What came of a question, or why it counts for nobody. */
export function leftOutWords({ leftOut, verdict }: MarkedLine): string {
  if (leftOut === 'retired') return m.exam_left_out_retired();
  if (leftOut) return m.exam_left_out_changed();
  return verdict ? outcomeLabels[verdict.outcome]() : m.exam_not_answered();
}
