import type { Zone } from '#engine/method/drawing.ts';
import type { DecoyId, StepId } from '#engine/method/method.ts';
import type { Sequence, SequenceStep } from '#engine/method/sequence.ts';
import type { Text } from '#engine/text.ts';
import { type FaultKind, faultKinds } from './fault.ts';

/** A card that somebody could mean when pointing at a place. */
export type Suspect = { readonly card: StepId | DecoyId; readonly say: Text };

/**
 * The short list to choose from: the cards that could be wrong in this way at this place, whether they
 * are or not. It holds every fault that can be pointed at there, and says nothing of which.
 */
export function suspects(sequence: Sequence, zone: Zone, kind: FaultKind): readonly Suspect[] {
  const joints = sequence.joints.filter((joint) => joint.zone === zone);
  if (kind === 'not-on-this-wall') {
    const spoilers = new Set(joints.flatMap(({ spoiltBy }) => spoiltBy));
    return sequence.strays.flatMap((stray) =>
      stray.kind === 'decoy' && spoilers.has(stray.decoy.id)
        ? [{ card: stray.decoy.id, say: stray.decoy.say }]
        : [],
    );
  }
  const keepers = new Set(joints.flatMap(({ keptBy }) => keptBy.map(({ step }) => step)));
  return sequence.steps
    .filter(({ id, draws }) => keepers.has(id) || draws.some((drawn) => drawn.zone === zone))
    .filter(couldBe[kind])
    .map(({ id, say }) => ({ card: id, say }));
}

/** The kinds of fault that somebody could mean at a place. */
export const kindsAt = (sequence: Sequence, zone: Zone): readonly FaultKind[] =>
  faultKinds.filter((kind) => suspects(sequence, zone, kind).length > 0);

const couldBe: Readonly<
  Record<Exclude<FaultKind, 'not-on-this-wall'>, (step: SequenceStep) => boolean>
> = {
  'left-out': () => true,
  'out-of-order': () => true,
  rushed: ({ dries }) => dries !== undefined,
  'out-of-tolerance': ({ asks }) => asks.length > 0,
};
