import type { Quantity } from '#engine/measure/quantity.ts';
import type { Rounding } from '#engine/measure/rational.ts';
import type { DataSheetId, NumberId, SourceId } from '#engine/method/method.ts';
import type { WeatherCondition } from '#engine/method/site.ts';
import type { Text } from '#engine/text.ts';
import type { Formula, Term } from './formula.ts';
import type { PictureKind } from './picture.ts';
import type { Called, Style } from './style.ts';
import type { Topic } from './topic.ts';

declare const idOf: unique symbol;
type Id<Kind extends string> = string & { readonly [idOf]: Kind };

export type FamilyId = Id<'family'>;
export type PartId = Id<'part'>;
export type GivenId = Id<'given'>;
export type SlipId = Id<'slip'>;

/** Problems that differ in their numbers only. Texts hold names in braces: `{run}`. */
export type Family = {
  readonly id: FamilyId;
  readonly title: Text;
  readonly topic: Topic;
  readonly dataSheet: DataSheetId;
  /** Where the way of computing comes from. */
  readonly source: SourceId;
  readonly intro: Text;
  /** The second is another view, where one does not show it all. */
  readonly pictures: readonly Picture[];
  readonly givens: readonly Given[];
  /** What must hold on any job, real or made up. */
  readonly needs: readonly Need[];
  /** What must hold besides, to make a good problem. */
  readonly where: readonly Formula[];
  /** In the order in which they are asked: a part may use the answers of those before it. */
  readonly parts: readonly Part[];
  /** The numbers of the data sheet that the problem works with, in the order of that sheet. */
  readonly sheetNumbers: readonly SheetName[];
  /** How many different terms its formulas have. */
  readonly terms: number;
};

/** A number of the data sheet that formulas name as it is. */
export type SheetName = { readonly number: NumberId; readonly term: Term };

export type Picture = {
  readonly kind: PictureKind;
  /** Each measure of the picture, and whose value it shows. */
  readonly shows: ReadonlyMap<string, Term>;
};

export type Given = {
  readonly id: GivenId;
  readonly name: Text;
  readonly term: Term;
  readonly style: Style | undefined;
  readonly from: Origin;
};

export type Origin =
  /** One of from, from + by, ... up to `to`. */
  | {
      readonly kind: 'range';
      readonly from: Quantity;
      readonly to: Quantity;
      readonly by: Quantity;
    }
  | { readonly kind: 'one-of'; readonly values: readonly Quantity[] }
  /** True or false, each with the words for it. */
  | { readonly kind: 'either'; readonly yes: Text; readonly no: Text }
  /** A number of the data sheet; one that depends on the weather, in this weather. */
  | {
      readonly kind: 'sheet';
      readonly number: NumberId;
      readonly take: Take;
      readonly at: ReadonlyMap<WeatherCondition, Formula>;
    }
  | { readonly kind: 'computed'; readonly formula: Formula };

/** What a take-off plans with, or an end of what is right. */
export const takes = ['aim', 'least', 'most'] as const;
export type Take = (typeof takes)[number];

export type Need = { readonly that: Formula; readonly say: Text };

export type Part = {
  readonly id: PartId;
  /** What is computed, for a list of materials: `Cartridges of lap sealant`. */
  readonly name: Text;
  readonly ask: Text;
  readonly term: Term;
  readonly formula: Formula;
  readonly answer: Answered;
  /** Why it is computed in this way; stands above the worked solution. */
  readonly why: Text | undefined;
  readonly slips: readonly Slip[];
  /** Units for what is computed on the way, where the usual ones would hide it. */
  readonly shown: readonly Style[];
  /** An answer may be 0, 1 or one of the givens. */
  readonly mayBeTrivial: boolean;
};

export type Answered =
  | {
      readonly kind: 'quantity';
      readonly style: Style;
      readonly called: Called | undefined;
      /** None: the answer is exact. */
      readonly round: RoundRule | undefined;
    }
  | { readonly kind: 'decision'; readonly yes: Text; readonly no: Text };

export type RoundRule = { readonly how: Rounding; readonly to: Quantity };

/** A wrong way that people go, and what to tell who went it. */
export type Slip = {
  readonly id: SlipId;
  readonly formula: Formula;
  /** As the answer is, unless the slip lies in the rounding. */
  readonly round: RoundRule | undefined;
  readonly tell: Text;
  /** Instances in which it gives the right answer are as good as others. */
  readonly mayAgree: boolean;
};
