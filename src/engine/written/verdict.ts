import type { MarkedFinds } from '#engine/inspection/mark-finds.ts';
import type { Text } from '#engine/text.ts';

export const outcomes = ['right', 'partly', 'wrong'] as const;
export type Outcome = (typeof outcomes)[number];

/** What an answer is worth, and why, in words of the question. */
export type Verdict = ChoiceVerdict | ChoicesVerdict | OrderVerdict | NumberVerdict | FaultVerdict;

type Marked = {
  readonly outcome: Outcome;
  /** From 0 to 1, to a thousandth; 1 only where it is right. */
  readonly credit: number;
  readonly point: Text;
};

export type ChoiceVerdict = Marked & {
  readonly kind: 'choose-one';
  readonly right: Text;
  /** What was taken; undefined where it was none of the choices. */
  readonly taken: Text | undefined;
  /** Why the very choice that was taken is wrong. */
  readonly because: Text | undefined;
};

export type ChoicesVerdict = Marked & {
  readonly kind: 'choose-all';
  /** Every choice, the right ones first. */
  readonly parts: readonly ChoicePart[];
};

export type ChoicePart = {
  readonly say: Text;
  readonly isRight: boolean;
  readonly isTaken: boolean;
  /** Why it is wrong. */
  readonly because: Text | undefined;
};

export type OrderVerdict = Marked & {
  readonly kind: 'order';
  /** In the right order. */
  readonly steps: readonly PlacedStep[];
  /** How many of all pairs stand in their right order. */
  readonly kept: number;
  readonly pairs: number;
  readonly because: Text;
};

export type PlacedStep = {
  readonly say: Text;
  /** How many places too late, or below 0 too early; undefined where it was not placed. */
  readonly off: number | undefined;
};

/** `wrong-unit`: of another kind, or the number would be right in the unit that was asked for. */
export const numberFindings = [
  'right',
  'slip',
  'wrong-unit',
  'too-low',
  'too-high',
  'unreadable',
] as const;
export type NumberFinding = (typeof numberFindings)[number];

export type NumberVerdict = Marked & {
  readonly kind: 'number';
  readonly found: NumberFinding;
  /** How it was read; undefined where it could not be. */
  readonly read: Text | undefined;
  /** What is right, in a few words. */
  readonly right: Text;
  /** What was found and what to do. */
  readonly because: Text | undefined;
};

export type FaultVerdict = Marked & {
  readonly kind: 'find-fault';
  readonly finds: MarkedFinds;
  /** What the fault does to the wall. */
  readonly because: Text;
};
