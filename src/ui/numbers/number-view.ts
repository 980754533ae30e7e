/** What the server says of the numbers of a part, as the screens read it. */
import type { SpreadOverForms } from '#engine/exam/spread.ts';
import type { PartKind } from '#engine/exam/scheme.ts';
import type { Enough } from '#engine/statistics/enough.ts';
import type { CurveSaid, NoCurves } from '#engine/statistics/item-fit.ts';
import type { ItemVerdict } from '#engine/statistics/item-verdict.ts';
import type { TestVerdict } from '#engine/statistics/test-verdict.ts';
import type { Interval } from '#engine/statistics/wilson.ts';
import type { Text } from '#engine/text.ts';

export type Share = { readonly share: number; readonly interval: Interval };

export type Precision = {
  readonly outcome: 'converged';
  readonly reliability: number;
  readonly questions: number;
  readonly passMark: number;
  readonly offAtPassMark: number;
  readonly errorOfMeasurement: number | undefined;
  readonly ability: number;
  readonly curve: readonly { readonly ability: number; readonly information: number }[];
  readonly cycles: number;
};

export type PrecisionSaid = Enough<Precision | NoCurves>;

export type Forms = {
  readonly count: number;
  readonly alone: number;
  readonly lines: readonly {
    readonly questions: number;
    readonly sat: number;
    readonly mean: Enough<number>;
    readonly passed: Enough<Share>;
    readonly verdict: TestVerdict;
  }[];
};

export type FormsDrawn = SpreadOverForms & {
  readonly unmatched: number;
  readonly unknown: number;
};

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
  readonly curve: Enough<CurveSaid>;
  readonly ownCurve: Enough<CurveSaid>;
};
