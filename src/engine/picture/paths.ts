import { type Zone, zones } from '#engine/method/drawing.ts';
import { edgeOf } from './patch.ts';
import { type Plan, project } from './plan.ts';
import type { Point } from './point.ts';
import { rangeOf, toeOf } from './range.ts';
import { patchesOf, seamOf } from './run-extent.ts';
import { type Surface, offset, pointsOf, stretch } from './surface.ts';
import type { Wall } from './wall.ts';

type Paths = ReadonlyMap<Zone, readonly Point[]>;

const places: readonly Zone[] = ['wall', 'top-edge', 'transition', 'shelf', 'toe', 'front-edge'];

/** Where each zone runs in section, on the face as it stands. */
export function pathsInSection(wall: Wall, surface: Surface): Paths {
  return new Map(
    [...places, 'everywhere' as const].flatMap((zone) => {
      const range = rangeOf(wall, { layer: 'membrane', zone, takes: new Map(), card: '' });
      if (!range) return [];
      const line = pointsOf(offset(stretch(surface, range[0], range[1]), 0.12));
      return [[zone, line] as const];
    }),
  );
}

/** Where each zone runs along the wall: down it at a seam, a corner or an end, else in the middle. */
export function pathsAlong(wall: Wall, plan: Plan): Paths {
  const { legs } = plan;
  const first = legs[0]!;
  const seam = seamOf(wall, plan);
  const down = (leg: number, u: number): readonly Point[] =>
    edgeOf(legs, wall.face, { leg, u0: u, u1: u, v0: -wall.height, v1: toeOf(wall) }, u);
  return new Map<Zone, readonly Point[]>([
    ...zones.flatMap((zone) => {
      const one = { layer: 'membrane', zone, takes: new Map(), card: '' } as const;
      const patch = patchesOf(wall, plan, one)[0];
      if (!patch) return [];
      const middle = (patch.u0 + patch.u1) / 2;
      return [[zone, edgeOf(legs, wall.face, patch, middle)] as const];
    }),
    ...(seam ? [['seam', down(0, seam.over)] as const] : []),
    ['corner', down(0, plan.corner ? 3 : 2)],
    [
      'ends',
      [project(first, first.length, [0, 0]), project(first, first.length, [toeOf(wall), 0])],
    ],
    [
      'jambs',
      [
        project(first, 0, [wall.scene.reach / 2, wall.scene.top]),
        project(first, 0, [wall.scene.reach / 2, 0]),
      ],
    ],
  ]);
}
