/** The evidence of an application, as the server says it. */
import type { CheckSheet } from '#engine/exam/check-sheet.ts';
import type { Verdict } from '#engine/exam/decision.ts';
import type { Lack } from '#engine/exam/evidence.ts';
import type { PartKind } from '#engine/exam/scheme.ts';
import type { KeptOut } from '#engine/exam/separation.ts';
import type { PartState } from '#engine/exam/standing.ts';
import type { Text } from '#engine/text.ts';

export type CheckShown = {
  readonly id: string;
  readonly examinerName: string;
  readonly place: number;
  readonly signedAt: string;
  readonly sheet: CheckSheet;
  readonly basis: string;
};

export type ResultShown = {
  readonly id: string;
  readonly on: string;
  readonly result: string;
  readonly share: number | null;
  readonly agreement: string | null;
  readonly isReleased: boolean;
  readonly examiners: readonly string[];
  readonly detail: unknown;
  readonly checks: readonly CheckShown[];
};

export type PartShown = {
  readonly id: string;
  readonly kind: PartKind;
  readonly title: Text;
  readonly evidences: Text;
  readonly passMark: number;
  readonly state: PartState;
  readonly results: readonly ResultShown[];
};

export type PartTitles = Readonly<Record<string, Text>>;

export type RulingShown = {
  readonly id: string;
  readonly appeal: string | null;
  readonly verdict: Verdict;
  readonly byName: string;
  readonly on: string;
  readonly because: string;
  readonly asks: readonly string[];
  readonly until: string | null;
};

export type AppealShown = {
  readonly id: string;
  readonly ruling: string;
  readonly on: string;
  readonly because: string;
};

export type CaseShown = {
  readonly application: {
    readonly personName: string;
    readonly madeAt: string;
    readonly closedAt: string | null;
    readonly renews: { readonly until: string } | undefined;
  };
  readonly title: Text;
  readonly note: Text;
  readonly lacks: readonly Lack[];
  readonly asked: readonly string[];
  readonly keptOut: readonly KeptOut[];
  readonly rulings: readonly RulingShown[];
  readonly openAppeal: string | null;
  readonly asOf: string;
};
