import type { Point } from './point.ts';
import { type Leg, project, startOf } from './plan.ts';
import { type Surface, pointsOf, stretch } from './surface.ts';

/** A rectangle of the developed face: along the wall from `u0` to `u1`, down it from `v0` to `v1`. */
export type Patch = {
  readonly leg: number;
  readonly u0: number;
  readonly u1: number;
  readonly v0: number;
  readonly v1: number;
};

/** Its outline on paper. What begins at a corner, or reaches into one, follows the mitre. */
export function outlineOf(legs: readonly Leg[], face: Surface, patch: Patch): readonly Point[] {
  const leg = legs[patch.leg]!;
  const line = profileOf(face, patch.v0, patch.v1, leg.mitre > 0 ? patch.u0 : undefined);
  return [
    ...line.map((at) => project(leg, firstOf(leg, patch.u0, at[0]), at)),
    ...line
      .toReversed()
      .map((at) => project(leg, Math.max(patch.u1, firstOf(leg, patch.u0, at[0])), at)),
  ];
}

/** Where a patch from `u0` begins so far out from the face. */
export const firstOf = (leg: Leg, u0: number, x: number): number =>
  leg.mitre > 0 ? Math.max(u0, startOf(leg, x)) : u0 === 0 ? startOf(leg, x) : u0;

/** The edge of a patch at one `u`, as far as the corner lets it run. */
export function edgeOf(
  legs: readonly Leg[],
  face: Surface,
  { leg, v0, v1 }: Patch,
  u: number,
): readonly Point[] {
  const side = legs[leg]!;
  const end = side.mitre > 0 ? Math.max(v0, Math.min(v1, u)) : v1;
  return profileOf(face, v0, end).map((at) => project(side, u, at));
}

/** The face between two `v`, with a vertex where it is `x` out, if it gets there. */
export function profileOf(face: Surface, v0: number, v1: number, x?: number): readonly Point[] {
  const inside = x !== undefined && x > v0 && x < v1 && x > 0;
  const line = inside
    ? [...stretch(face, v0, x), ...stretch(face, x, v1).slice(1)]
    : stretch(face, v0, v1);
  return pointsOf(line);
}

export const pointAt = (face: Surface, v: number): Point => stretch(face, v, v + 1e-6)[0]!.at;

export const sizeOf = ({ u0, u1, v0, v1 }: Patch): number => (u1 - u0) * (v1 - v0);

/** How much of the developed face two patches have in common. */
export const shared = (a: Patch, b: Patch): number =>
  a.leg === b.leg
    ? Math.max(0, Math.min(a.u1, b.u1) - Math.max(a.u0, b.u0)) *
      Math.max(0, Math.min(a.v1, b.v1) - Math.max(a.v0, b.v0))
    : 0;
