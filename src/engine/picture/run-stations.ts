import { dimensionOf, shapeOf } from './laid.ts';
import { paint } from './paint.ts';
import { project } from './plan.ts';
import type { Point } from './point.ts';
import { type Along, type RunJob, along } from './run-job.ts';
import { stationsOf } from './run-extent.ts';
import { rangeOf } from './range.ts';
import { pointAt } from './patch.ts';

const corners = 10;

/** Heads of screws, at their spacing. */
export function fastenersAlong({ wall, plan, one }: RunJob): Along {
  const range = rangeOf(wall, one);
  if (!range) return along([], undefined);
  const middle = (range[0] + range[1]) / 2;
  const stations = stationsOf(wall, plan, one, 8);
  const on = pointAt(wall.face, middle);
  const onWall = middle < 0;
  const shapes = stations.map(({ leg, u }, index) => {
    const ring = Array.from({ length: corners }, (_, i): Point => {
      const turn = (2 * Math.PI * i) / corners;
      const [a, b] = [0.36 * Math.cos(turn), 0.36 * Math.sin(turn)];
      const at: Point = onWall ? [on[0], on[1] + b] : [on[0] + b, on[1]];
      return project(plan.legs[leg]!, u + a, at);
    });
    return shapeOf(one, `head.${index}`, ring, paint('medium', 'solid'));
  });
  const at = (index: number): Point => {
    const station = stations[index]!;
    return project(plan.legs[station.leg]!, station.u, on);
  };
  const pair = stations.findIndex(({ leg }, i) => i > 0 && stations[i + 1]?.leg === leg);
  const first = Math.max(0, pair);
  const spaced = stations[first + 1]?.leg === stations[first]?.leg;
  return along(
    shapes,
    at(stations.length > 3 ? Math.min(first + 2, stations.length - 1) : 0),
    spaced ? dimensionOf(one, 'spacing', at(first), at(first + 1), [0, 1]) : [],
  );
}

/** Openings at the foot of the brick that is still to come, with its first course. */
export function weepsAlong({ wall, plan, one }: RunJob): Along {
  const { reach } = wall.scene;
  const stations = stationsOf(wall, plan, one, 24);
  const high = 2.4;
  const course = plan.legs.map((leg, index) => {
    const start = leg.mitre * reach;
    const at = (u: number, y: number): Point => project(leg, u, [reach, y]);
    const outline = [at(start, 0.15), at(leg.length, 0.15), at(leg.length, high), at(start, high)];
    return shapeOf(one, `course.${index}`, outline, paint('hair', 'none', 'ghost'));
  });
  const slots = stations.map(({ leg, u }, index) => {
    const side = plan.legs[leg]!;
    const at = (along: number, y: number): Point => project(side, along, [reach, y]);
    const outline = [at(u - 0.19, 0.1), at(u + 0.19, 0.1), at(u + 0.19, high), at(u - 0.19, high)];
    return shapeOf(one, `slot.${index}`, outline, paint('medium', 'solid'));
  });
  const [a, b] = stations;
  const foot = (station: { leg: number; u: number }): Point =>
    project(plan.legs[station.leg]!, station.u, [reach, 0.1]);
  return along(
    [...course, ...slots],
    a && project(plan.legs[a.leg]!, a.u, [reach, high]),
    a && b && a.leg === b.leg ? dimensionOf(one, 'spacing', foot(a), foot(b), [0, -1]) : [],
  );
}
