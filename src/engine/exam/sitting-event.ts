/** When the server saw something: milliseconds since 1970 in UTC, by its own clock. */
export type Instant = number;

/**
 * One answer as it was given. Nothing in it is trusted but its order: `sequence` counts up over the
 * whole sitting, each tab going on from the highest number it has heard of.
 */
export type Answer = {
  /** Made where it was given, so that sending it again is harmless. */
  readonly id: string;
  /** From 1. */
  readonly sequence: number;
  readonly tab: string;
  readonly item: string;
  /** What was given, as it was sent; the marking reads it. */
  readonly value: string;
  /** What the device's clock said. Kept to be looked at, and never reckoned with. */
  readonly clientTime?: number;
};

/** Time given back: a length that an invigilator chooses, or a stretch in which nobody could work. */
export type Grant =
  | { readonly kind: 'more'; readonly milliseconds: number }
  | { readonly kind: 'pause'; readonly from: Instant; readonly to: Instant };

/** What can happen in a sitting, before the server has said when. */
export type Happening =
  | { readonly kind: 'opened'; readonly by: string }
  | { readonly kind: 'page-shown'; readonly item: string; readonly tab: string }
  | { readonly kind: 'answered'; readonly answer: Answer }
  | { readonly kind: 'left-page'; readonly tab: string }
  | { readonly kind: 'came-back'; readonly tab: string }
  | {
      readonly kind: 'time-granted';
      readonly by: string;
      readonly because: string;
      readonly grant: Grant;
    }
  | {
      readonly kind: 'item-retired';
      readonly by: string;
      readonly because: string;
      readonly item: string;
    }
  | { readonly kind: 'handed-in' }
  | { readonly kind: 'time-ran-out' }
  | { readonly kind: 'released'; readonly by: string }
  | { readonly kind: 'voided'; readonly by: string; readonly because: string };

/** What happened in one sitting, and when the server saw it. */
export type SittingEvent = Happening & { readonly sitting: string; readonly at: Instant };
