import type { Hazard } from '#engine/compile/content.ts';
import type { AskedWall } from '#engine/inspection/asked-wall.ts';

/** A wall of an examination as the server shows it: what is up, and the cards to build with. */
export type ShownWall = AskedWall & { readonly hazards: readonly Hazard[] };
