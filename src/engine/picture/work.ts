import type { Quantity } from '#engine/measure/quantity.ts';
import type { SettingId } from '#engine/method/method.ts';
import type { Severity } from '#engine/severity.ts';

/** What stands on the wall: the cards placed so far in their order, right or wrong. */
export type Work = {
  readonly placed: readonly Placed[];
  /** What a review found, to be shown. A card that is not among the placed was left out. */
  readonly faults: readonly Fault[];
  /** Whether the finished sheet shows in outline before it is hung. */
  readonly ghost: boolean;
};

export type Placed = {
  /** The id of a step or decoy of the method; of this site or of another. */
  readonly card: string;
  /** A setting that is missing is drawn as the data sheet recommends. */
  readonly settings: ReadonlyMap<SettingId, Quantity>;
  /** Whether what the card put on has had its time to dry. */
  readonly state: 'wet' | 'dry';
};

export type Fault = { readonly card: string; readonly severity: Severity };

export const noWork: Work = { placed: [], faults: [], ghost: false };
