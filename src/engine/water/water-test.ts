/**
 * Runs water down the finished wall: joints are edges of a graph from the wet place to the dry
 * ones, and every simple path of open joints is a leak. Listing all of them costs what they are many; a
 * method has some twenty joints.
 */
import type { Joint, Place, PlaceId } from '#engine/method/method.ts';
import { type Breach, type OpenJoint, openJoints } from './open-joints.ts';
import { smallestRepair } from './smallest-repair.ts';

/** One way in, from the wet side to the dry, and the breaches that keep it open. */
export type Leak = {
  readonly path: readonly OpenJoint[];
  readonly into: PlaceId;
  readonly breaches: readonly number[];
};

export type WaterResult = {
  readonly leaks: readonly Leak[];
  /** The fewest breaches whose repair closes every leak; `undefined` when no repair does. */
  readonly repair: readonly number[] | undefined;
};

export function waterTest(
  places: readonly Place[],
  joints: readonly Joint[],
  breaches: readonly Breach[],
): WaterResult {
  const leaks = openPaths(places, openJoints(joints, breaches)).map((path) => ({
    path,
    into: path.at(-1)!.joint.to,
    breaches: [...new Set(path.flatMap((open) => open.breaches))].sort((a, b) => a - b),
  }));
  return { leaks, repair: smallestRepair(leaks.map(({ path }) => path)) };
}

/** Depth first, each path ending at the first dry place it meets. */
function openPaths(
  places: readonly Place[],
  open: readonly OpenJoint[],
): readonly (readonly OpenJoint[])[] {
  const dry = new Set(places.filter(({ side }) => side === 'dry').map(({ id }) => id));
  const follow = (
    from: PlaceId,
    passed: readonly PlaceId[],
    path: readonly OpenJoint[],
  ): readonly (readonly OpenJoint[])[] =>
    dry.has(from)
      ? [path]
      : open
          .filter(({ joint }) => joint.from === from && !passed.includes(joint.to))
          .flatMap((next) => follow(next.joint.to, [...passed, next.joint.to], [...path, next]));
  return places.filter(({ side }) => side === 'wet').flatMap(({ id }) => follow(id, [id], []));
}
