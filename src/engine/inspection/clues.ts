import type { Zone } from '#engine/method/drawing.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import { type FaultKind, zonesOn } from './fault.ts';
import { kindsAt, type Suspect, suspects } from './suspects.ts';

/** A kind of fault that somebody could mean at a place, with the cards that they could mean by it. */
export type Clue = { readonly kind: FaultKind; readonly suspects: readonly Suspect[] };

/**
 * Everything that can be said of a wall, by the places that can be pointed at: the same whatever is wrong
 * with it, so that it can be handed to whoever looks.
 */
export type Clues = ReadonlyMap<Zone, readonly Clue[]>;

export const cluesOn = (sequence: Sequence): Clues =>
  new Map(
    zonesOn(sequence).map((zone) => [
      zone,
      kindsAt(sequence, zone).map((kind) => ({ kind, suspects: suspects(sequence, zone, kind) })),
    ]),
  );
