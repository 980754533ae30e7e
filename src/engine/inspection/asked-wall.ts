/** A wall to be built without help, as it is shown: nothing of it says in which order, how far, or why. */
import type { Quantity } from '#engine/measure/quantity.ts';
import type { SheetNumber } from '#engine/method/data-sheet.ts';
import type { Feel } from '#engine/method/drying.ts';
import type { HazardId, SettingId } from '#engine/method/method.ts';
import type { Drawing } from '#engine/picture/drawing.ts';
import type { Text } from '#engine/text.ts';

/** A setting without what judges it. */
export type AskedSetting = {
  readonly id: SettingId;
  readonly ask: Text;
  readonly sheetNumber: Pick<SheetNumber, 'dimension' | 'entry'>;
  /** Where it stands before anybody sets it. */
  readonly start: Quantity | undefined;
};

export type AskedCard = {
  readonly id: string;
  readonly say: Text;
  readonly hazards: readonly HazardId[];
  readonly asks: readonly AskedSetting[];
};

/** What a knuckle tells of a card that is up. */
export type Felt = { readonly card: string; readonly feel: Feel };

export type AskedWall = {
  readonly title: Text;
  readonly facts: readonly { readonly name: Text; readonly value: Text }[];
  readonly cards: readonly AskedCard[];
  /** Minutes that can be waited at one press. */
  readonly waits: readonly number[];
  readonly drawing: Drawing;
  /** Of everything up that dries. */
  readonly felt: readonly Felt[];
  /** What these two stand for: so many cards up, after so many minutes of waiting. */
  readonly standsFor: { readonly cards: number; readonly minute: number };
};
