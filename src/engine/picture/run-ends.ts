import { dimensionOf, shapeOf } from './laid.ts';
import { measureOf } from './measures.ts';
import { paint } from './paint.ts';
import { pointAt } from './patch.ts';
import { type Leg, project } from './plan.ts';
import type { Point } from './point.ts';
import { rangeOf, toeOf } from './range.ts';
import type { Shape } from './drawing.ts';
import { stationsOf } from './run-extent.ts';
import { type Along, type RunJob, along, filled } from './run-job.ts';
import { plannedOn } from './wall.ts';

/** The sheet's ends turned up across the shelf, at each end that is no corner. */
export function endDamAlong({ wall, plan, one }: RunJob): Along {
  const height = measureOf(wall, one, 'height', 1);
  const toe = Math.min(toeOf(wall), wall.scene.reach);
  const shapes = endsOf(plan.legs).map(({ leg, u }, index) => {
    const at = (x: number, y: number): Point => project(leg, u, [x, y]);
    const outline = [at(0, 0), at(toe, 0), at(toe, height), at(0, height)];
    return shapeOf(one, `dam.${index}`, outline, paint('medium', 'tone'));
  });
  const { leg, u } = endsOf(plan.legs)[0]!;
  const foot = project(leg, u, [toe, 0]);
  return along(
    shapes,
    project(leg, u, [toe / 2, height]),
    dimensionOf(one, 'height', foot, project(leg, u, [toe, height]), [-1, 0]),
  );
}

/** A dab over each head that is there already. */
function headCaps({ wall, plan, one }: RunJob): readonly Shape[] {
  const screws = wall.applied.findLast(
    ({ layer, zone }) => layer === 'fasteners' && zone !== 'toe',
  );
  const range = screws && rangeOf(wall, screws);
  if (!range) return [];
  const on = pointAt(wall.face, (range[0] + range[1]) / 2);
  return stationsOf(wall, plan, screws, 8).map(({ leg, u }, index) => {
    const ring = Array.from({ length: 10 }, (_, i): Point => {
      const turn = (Math.PI * i) / 5;
      return project(plan.legs[leg]!, u + 0.55 * Math.cos(turn), [
        on[0],
        on[1] + 0.55 * Math.sin(turn),
      ]);
    });
    return shapeOf(one, `cap.${index}`, ring, paint('thin', 'sealant'));
  });
}

/** The ends of the run: both of a straight one, the far one of each side of a corner. */
const endsOf = (legs: readonly Leg[]) =>
  legs.flatMap((leg) => [...(leg.mitre === 0 ? [{ leg, u: 0 }] : []), { leg, u: leg.length }]);

/** A bead along the bar and over its screws, or in the folds of the end dams. */
export function sealantAlong(job: RunJob): Along {
  const { wall, plan, one, patches } = job;
  if (one.zone !== 'ends') {
    const patch = patches[0];
    const leg = patch && plan.legs[patch.leg]!;
    return along(
      [...filled(job, paint('thin', 'sealant')), ...headCaps(job)],
      leg && project(leg, leg.length * 0.42, pointAt(wall.face, patch.v0 + 0.2)),
    );
  }
  const dam = plannedOn(wall, 'end-dam')[0];
  const height = dam ? measureOf(wall, dam, 'height', 1) : 1;
  const toe = Math.min(toeOf(wall), wall.scene.reach);
  const shapes = endsOf(plan.legs).map(({ leg, u }, index) => {
    const line = [project(leg, u, [0, height]), project(leg, u, [0, 0]), project(leg, u, [toe, 0])];
    return shapeOf(one, `bead.${index}`, line, paint('heavy'), false);
  });
  const { leg, u } = endsOf(plan.legs)[0]!;
  return along(shapes, project(leg, u, [toe * 0.3, 0]));
}
