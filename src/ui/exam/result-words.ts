import type { VerdictKind } from '#engine/takeoff/verdict.ts';
import type { WorkedLine } from '#engine/takeoff/worked-line.ts';
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

export type WrittenLine = {
  readonly item: string;
  readonly ask?: Text | undefined;
  readonly unit?: Text | undefined;
  readonly verdict?: ShownVerdict | undefined;
  readonly leftOut?: LeftOut;
};

export type ProblemLine = {
  readonly item: string;
  readonly ask?: Text | undefined;
  readonly intro?: Text | undefined;
  readonly stated: readonly { readonly id: string; readonly name: Text; readonly value: Text }[];
  readonly parts: readonly {
    readonly ask: Text;
    readonly given?: string | undefined;
    readonly read?: Text | undefined;
    readonly unread?: Text | undefined;
    readonly verdict?: VerdictKind | undefined;
    readonly say?: Text | undefined;
    readonly right: Text;
    readonly worked: readonly WorkedLine[];
  }[];
  readonly credit: number;
  readonly leftOut?: LeftOut;
};

type LeftOut = 'retired' | 'gone' | 'changed' | undefined;

/** What came of a sitting, as it was kept with its result. */
export type MarkedDetail = { readonly passMark: number } & (
  | { readonly kind: 'written'; readonly lines: readonly WrittenLine[] }
  | { readonly kind: 'takeoff'; readonly lines: readonly ProblemLine[] }
);

const outcomes: Readonly<Record<string, () => string>> = {
  passed: m.result_passed,
  failed: m.result_failed,
  void: m.result_void,
};

export const outcomeWords = (outcome: string): string => (outcomes[outcome] ?? m.result_none)();

export const shareWords = (share: number): string =>
  share.toLocaleString(language.locale, { style: 'percent', maximumFractionDigits: 1 });

/** Why it counts for nobody, or nothing. */
export const leftOutWords = (leftOut: LeftOut): string | undefined =>
  leftOut === 'retired' ? m.exam_left_out_retired() : leftOut && m.exam_left_out_changed();

export const verdictWords = ({ leftOut, verdict }: WrittenLine): string =>
  leftOutWords(leftOut) ?? (verdict ? outcomeLabels[verdict.outcome]() : m.exam_not_answered());

/** How many of its parts earned something, as of all. */
export function problemWords({ leftOut, parts }: ProblemLine): string {
  const right = parts.filter(({ verdict }) => verdict === 'right').length;
  return leftOutWords(leftOut) ?? m.takeoff_sum({ right, all: parts.length });
}
