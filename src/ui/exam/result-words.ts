import type { Outcome } from '#engine/marking/outcome.ts';
import type { PunchLine } from '#engine/marking/punch-line.ts';
import type { VerdictKind } from '#engine/takeoff/verdict.ts';
import type { WorkedLine } from '#engine/takeoff/worked-line.ts';
import type { Text } from '#engine/text.ts';
import type { Verdict } from '#engine/written/verdict.ts';
import { language } from '#ui/language/language.svelte.ts';
import { m } from '#ui/messages/generated/messages.js';
import { outcomeWords as dispositionWords } from '#ui/review/item-words.ts';
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

export type WallLine = {
  readonly item: string;
  readonly ask?: Text | undefined;
  readonly facts: readonly { readonly name: Text; readonly value: Text }[];
  readonly score: number;
  readonly outcome: Outcome;
  readonly punch: readonly PunchLine[];
  readonly leaks: number;
  readonly leftOut?: LeftOut;
};

type LeftOut = 'retired' | 'gone' | 'changed' | undefined;

/** What came of a sitting, as it was kept with its result. */
export type MarkedDetail = { readonly passMark: number } & (
  | { readonly kind: 'written'; readonly lines: readonly WrittenLine[] }
  | { readonly kind: 'takeoff'; readonly lines: readonly ProblemLine[] }
  | { readonly kind: 'mock-up'; readonly lines: readonly WallLine[] }
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

/** How many of its parts are right. */
export function problemWords({ leftOut, parts }: ProblemLine): string {
  const right = parts.filter(({ verdict }) => verdict === 'right').length;
  return leftOutWords(leftOut) ?? m.exam_parts_right({ right, all: parts.length });
}

/** Accept, rework or tear out, and the score of 100. */
export const wallWords = ({ leftOut, outcome, score }: WallLine): string =>
  leftOutWords(leftOut) ??
  `${dispositionWords[outcome].name()} · ${score.toLocaleString(language.locale)} / 100`;

const markedKinds = ['written', 'takeoff', 'mock-up'];

/** Whether it is of a part that was sat at a screen, and not of a check by hand or a void. */
export const isMarkedDetail = (detail: unknown): detail is MarkedDetail =>
  typeof detail === 'object' &&
  detail !== null &&
  'lines' in detail &&
  Array.isArray(detail.lines) &&
  'kind' in detail &&
  markedKinds.includes(String(detail.kind));
