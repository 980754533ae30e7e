import type { Hazard } from '#engine/compile/content.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import type { Feel } from '#engine/method/drying.ts';
import type { HazardId } from '#engine/method/method.ts';
import type { Ask } from '#engine/method/sequence.ts';
import type { Drawing } from '#engine/picture/drawing.ts';
import type { Text } from '#engine/text.ts';

/** A setting without what judges it. */
export type AskedSetting = Pick<Ask, 'id' | 'ask'> & {
  readonly sheetNumber: Pick<Ask['sheetNumber'], 'dimension' | 'entry'>;
  readonly start: Quantity | undefined;
};

export type AskedCard = {
  readonly id: string;
  readonly say: Text;
  readonly hazards: readonly HazardId[];
  readonly asks: readonly AskedSetting[];
};

export type Felt = { readonly card: string; readonly feel: Feel };

/** A wall of an examination as the server shows it: what is up, and the cards to build with. */
export type AskedWall = {
  readonly title: Text;
  readonly facts: readonly { readonly name: Text; readonly value: Text }[];
  readonly cards: readonly AskedCard[];
  readonly hazards: readonly Hazard[];
  readonly waits: readonly number[];
  readonly drawing: Drawing;
  readonly felt: readonly Felt[];
  /** What picture and feel stand for: so many cards up, after so many minutes of waiting. */
  readonly standsFor: { readonly cards: number; readonly minute: number };
};
