import type { DimensionName } from '#engine/measure/dimension.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import type { Text } from '#engine/text.ts';
import type { DataSheetId, NumberId, SourceId } from './method.ts';
import type { WeatherCondition } from './site.ts';

/** The numbers of one material system, which every method, problem and check refers to. */
export type DataSheet = {
  readonly id: DataSheetId;
  readonly title: Text;
  readonly note: Text | undefined;
  readonly numbers: ReadonlyMap<NumberId, SheetNumber>;
};

export type SheetNumber = {
  readonly id: NumberId;
  readonly name: Text;
  readonly dimension: DimensionName;
  readonly rule: Rule;
  /** What a take-off plans with and a hint recommends. */
  readonly aim: Quantity | undefined;
  /** The values that the simulator offers. */
  readonly entry: Entry | undefined;
  readonly because: Text;
  readonly source: SourceId;
};

/** What makes a value right; every bound is included. */
export type Rule = FixedRule | ConditionalRule;

export type FixedRule =
  | { readonly kind: 'exactly'; readonly value: Quantity }
  | { readonly kind: 'at-least'; readonly value: Quantity }
  | { readonly kind: 'at-most'; readonly value: Quantity }
  | { readonly kind: 'between'; readonly low: Quantity; readonly high: Quantity }
  | { readonly kind: 'about'; readonly value: Quantity; readonly within: Quantity };

/** At least what the curve gives under the site's weather. */
export type ConditionalRule = {
  readonly kind: 'by';
  readonly curve: Curve;
  readonly times: Curve | undefined;
};

/** Straight lines between rows of ascending `at`, flat beyond the ends. */
export type Curve = {
  readonly by: WeatherCondition;
  readonly rows: readonly { readonly at: Quantity; readonly value: Quantity }[];
};

/** What a learner can set: by even steps, or one of the sizes that are made, two or more, ascending. */
export type Entry =
  | {
      readonly kind: 'range';
      readonly from: Quantity;
      readonly to: Quantity;
      readonly by: Quantity;
    }
  | { readonly kind: 'one-of'; readonly values: readonly Quantity[] };
