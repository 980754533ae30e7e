/** What the server says of the numbers of a part, as the screens read it. */
import type { PartKind } from '#engine/exam/scheme.ts';
import type { Enough } from '#engine/statistics/enough.ts';
import type { ItemEstimate } from '#engine/statistics/item-fit.ts';
import type { ItemVerdict } from '#engine/statistics/item-verdict.ts';
import type { Interval } from '#engine/statistics/wilson.ts';
import type { Text } from '#engine/text.ts';

export type Share = { readonly share: number; readonly interval: Interval };

export type Precision = {
  readonly reliability: number;
  readonly questions: number;
  readonly passMark: number;
  readonly offAtPassMark: number;
  readonly ability: number;
  readonly curve: readonly { readonly ability: number; readonly information: number }[];
};

export type PrecisionSaid = Enough<Precision | 'not-converged'>;

export type PartLine = {
  readonly id: string;
  readonly kind: PartKind;
  readonly title: Text;
  readonly sat: number;
  readonly passed: Enough<Share>;
  /** Of a written part. */
  readonly precision: PrecisionSaid | undefined;
};

export type GroupShare = {
  readonly kind: 'language' | 'crew';
  readonly name: string | null;
  readonly sat: number;
  readonly passed: Enough<Share>;
};

export type QuestionLine = {
  readonly id: string;
  /** Undefined where the content no longer has it. */
  readonly ask: Text | undefined;
  readonly topic: Text | undefined;
  readonly isRetired: boolean;
  readonly open: number;
  readonly verdict: ItemVerdict;
};

export type QuestionNumbers = QuestionLine & {
  readonly curve: Enough<ItemEstimate | undefined>;
  readonly ownCurve: Enough<ItemEstimate | undefined>;
};
