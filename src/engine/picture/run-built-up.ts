import { dimensionOf, shapeOf } from './laid.ts';
import { measureOf } from './measures.ts';
import { paint } from './paint.ts';
import { pointAt } from './patch.ts';
import { project } from './plan.ts';
import type { Point } from './point.ts';
import { type Along, type RunJob, along, filled } from './run-job.ts';
import { damDepth } from './window-sill.ts';

/** The sloped floor, and the wedge where the run is broken off. */
export function slopeAlong(job: RunJob): Along {
  const { wall, plan, one } = job;
  const leg = plan.legs[0]!;
  const { reach } = wall.scene;
  const rise = pointAt(wall.face, 0)[1];
  const wedge = [
    [0, 0],
    [reach, 0],
    [0, rise],
  ] as const;
  const cut = wedge.map(([x, y]) => project(leg, leg.length, [x, y]));
  return along(
    [
      ...filled(job, paint('thin', 'mortar')),
      ...(leg.cut ? [shapeOf(one, 'cut', cut, paint('medium', 'mortar'))] : []),
    ],
    project(leg, leg.length * 0.7, [reach * 0.5, rise / 2]),
  );
}

/** The block along the inside edge: its face, its top, and its cut. */
export function backDamAlong({ wall, plan, one }: RunJob): Along {
  const leg = plan.legs[0]!;
  const floor = pointAt(wall.face, 0)[1];
  const height = measureOf(wall, one, 'height', 1);
  const top = floor + height;
  const at = (u: number, x: number, y: number): Point => project(leg, u, [x, y]);
  const end = leg.length;
  return along(
    [
      shapeOf(
        one,
        'cut',
        [at(end, -damDepth, 0), at(end, 0, 0), at(end, 0, top), at(end, -damDepth, top)],
        paint('medium', 'wood'),
      ),
      shapeOf(
        one,
        'top',
        [at(0, -damDepth, top), at(0, 0, top), at(end, 0, top), at(end, -damDepth, top)],
        paint('medium', 'paper'),
      ),
      shapeOf(
        one,
        'face',
        [at(0, 0, floor), at(end, 0, floor), at(end, 0, top), at(0, 0, top)],
        paint('medium', 'paper'),
      ),
    ],
    at(end * 0.85, -damDepth / 2, top),
    dimensionOf(one, 'height', at(end, 0, floor), at(end, 0, top), [1, 0]),
  );
}
