import type { Quantity } from '#engine/measure/quantity.ts';
import type {
  DataSheetId,
  DecoyId,
  MethodId,
  NumberId,
  SettingId,
  SourceId,
  StepId,
} from '#engine/method/method.ts';
import type { Site } from '#engine/method/site.ts';
import type { Text } from '#engine/text.ts';

declare const idOf: unique symbol;
type Id<Kind extends string> = string & { readonly [idOf]: Kind };

export type TopicId = Id<'topic'>;
export type QuestionId = Id<'question'>;

export const questionKinds = ['choose-one', 'choose-all', 'order', 'number', 'find-fault'] as const;
export type QuestionKind = (typeof questionKinds)[number];

/**
 * What the author expects of those who learned the work (`expectedShare`). Where forms of an examination
 * are drawn, the share right takes its place once enough answers to the question were released.
 */
export const difficulties = ['easy', 'middling', 'hard'] as const;
export type Difficulty = (typeof difficulties)[number];

/** A question about the work, with everything that its marking needs. */
export type Question = ChooseOne | ChooseAll | PutInOrder | GiveNumber | FindFault;

/** Texts may name numbers of the data sheet in braces: `{turn-up-height}`. */
export type Asked = {
  readonly id: QuestionId;
  readonly topic: TopicId;
  readonly ask: Text;
  /** What to remember, shown once it is answered. */
  readonly point: Text;
  /** The steps that an answer is evidence for. */
  readonly of: readonly StepOf[];
  readonly difficulty: Difficulty;
  readonly source: SourceId;
  readonly dataSheet: DataSheetId;
  /** Other questions, whose points explain this one. */
  readonly explain: readonly QuestionId[];
};

export type StepOf = { readonly method: MethodId; readonly step: StepId };

export type WrongChoice = { readonly say: Text; readonly because: Text };

export type ChooseOne = Asked & {
  readonly kind: 'choose-one';
  readonly right: Text;
  readonly wrong: readonly WrongChoice[];
};

export type ChooseAll = Asked & {
  readonly kind: 'choose-all';
  readonly right: readonly Text[];
  readonly wrong: readonly WrongChoice[];
};

export type PutInOrder = Asked & {
  readonly kind: 'order';
  /** In the one right order. */
  readonly steps: readonly Text[];
  readonly because: Text;
};

export type GiveNumber = Asked & {
  readonly kind: 'number';
  readonly answer: NumberAnswer;
  /** What it is asked in, as `parseUnit` reads it. */
  readonly unit: string;
  readonly slips: readonly NumberSlip[];
};

/** A number of the data sheet, judged by its rule; or a quantity, right up to so much above or below. */
export type NumberAnswer =
  | { readonly kind: 'sheet'; readonly number: NumberId }
  | {
      readonly kind: 'quantity';
      readonly value: Quantity;
      readonly within: Quantity | undefined;
    };

/** A known wrong answer. */
export type NumberSlip = { readonly answer: Quantity; readonly because: Text };

export type FindFault = Asked & {
  readonly kind: 'find-fault';
  readonly method: MethodId;
  readonly site: Site;
  readonly fault: HiddenFault;
  readonly because: Text;
};

/** What is wrong with the wall; of an order, the two steps that were done the wrong way round. */
export type HiddenFault =
  | { readonly kind: 'left-out'; readonly step: StepId }
  | { readonly kind: 'out-of-order'; readonly before: StepId; readonly after: StepId }
  | { readonly kind: 'rushed'; readonly step: StepId; readonly minutes: number }
  | {
      readonly kind: 'out-of-tolerance';
      readonly step: StepId;
      readonly setting: SettingId;
      readonly value: Quantity;
    }
  | { readonly kind: 'not-on-this-wall'; readonly decoy: DecoyId };
