import type { FixedRule } from '#engine/method/data-sheet.ts';
import type { DecoyId, Rework, SettingId, StepId } from '#engine/method/method.ts';
import type { Ordered } from '#engine/method/sequence.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import type { Severity } from '#engine/severity.ts';
import type { Text } from '#engine/text.ts';
import type { Share } from './stakes.ts';

export const deviationKinds = [
  'left-out',
  'out-of-order',
  'not-on-this-wall',
  'done-again',
  'rushed',
  'out-of-tolerance',
] as const;
export type DeviationKind = (typeof deviationKinds)[number];

type Found<Kind extends DeviationKind, Card extends string = StepId> = {
  readonly kind: Kind;
  readonly card: Card;
  /** Place among the cards played; `undefined` for a step that was left out. */
  readonly at: number | undefined;
  readonly severity: Severity;
  readonly because: Text;
  readonly rework: Rework;
  /** How much of its weight it costs. */
  readonly share: Share;
};

export type LeftOut = Found<'left-out'>;

export type OutOfOrder = Found<'out-of-order'> & {
  /** How many standing steps it has to pass to stand right. */
  readonly places: number;
  readonly direction: 'early' | 'late';
  /** The constraints it broke, the most severe first. */
  readonly broken: readonly Ordered[];
};

export type NotOnThisWall = Found<'not-on-this-wall', StepId | DecoyId>;

export type DoneAgain = Found<'done-again', StepId>;

export type Rushed = Found<'rushed'> & {
  readonly waited: Quantity<'time'>;
  readonly least: Quantity<'time'>;
  /** The step that came too soon. */
  readonly next: StepId;
};

export type OutOfTolerance = Found<'out-of-tolerance'> & {
  readonly setting: SettingId;
  readonly given: Quantity;
  readonly rule: FixedRule;
};

export type Deviation = LeftOut | OutOfOrder | NotOnThisWall | DoneAgain | Rushed | OutOfTolerance;
