import type { Keynote, Shape } from './drawing.ts';
import { dimensionOf, shapeOf } from './laid.ts';
import { measureOf } from './measures.ts';
import { type Fill, paint } from './paint.ts';
import { pointAt } from './patch.ts';
import { type Plan, project } from './plan.ts';
import type { Point } from './point.ts';
import { belowOf } from './run-body.ts';
import { cornerLapOf, cornerLeg } from './run-extent.ts';
import { type Along, type RunJob, along } from './run-job.ts';
import { damDepth } from './window-sill.ts';
import { type Wall, plannedOn } from './wall.ts';

/** How far the wall beside the opening is shown, and how far the jamb's sheet turns out onto it. */
export const besideOpening = 8;
const turnOut = 6;

/** The jamb at the left end of the opening, and the face of the wall beside it. */
export function jambBody({ scene }: Wall, { legs }: Plan): readonly Shape[] {
  const leg = legs[0]!;
  const { reach, top } = scene;
  const at = (u: number, x: number, y: number): Point => project(leg, u, [x, y]);
  const built = (id: string, points: readonly Point[]): Shape => ({
    id: `built.${id}`,
    part: 'jamb',
    zone: undefined,
    points,
    closed: true,
    paint: paint('thin', 'paper'),
  });
  return [
    built('jamb', [at(0, -damDepth, 0), at(0, reach, 0), at(0, reach, top), at(0, -damDepth, top)]),
    built('beside', [
      at(-besideOpening, reach, -belowOf(scene)),
      at(0, reach, -belowOf(scene)),
      at(0, reach, top),
      at(-besideOpening, reach, top),
    ]),
  ];
}

export const jambKeynote = ({ scene }: Wall, { legs }: Plan): Keynote => ({
  part: 'jamb',
  at: project(legs[0]!, -besideOpening * 0.8, [scene.reach, -3]),
  standsOn: true,
});

/** A layer on the jamb, or the part of a corner piece that stands up it. */
export function jambAlong(job: RunJob): Along {
  const { wall, plan, one } = job;
  const leg = plan.legs[0]!;
  const { reach, top } = wall.scene;
  const upstand = upstandOf(wall);
  const floor = pointAt(wall.face, 0)[1];
  const panel = (name: string, y0: number, y1: number, fill: Fill): Shape =>
    shapeOf(
      one,
      name,
      [at(0, Math.max(y0, floor)), at(reach, y0), at(reach, y1), at(0, y1)],
      paint('medium', fill),
    );
  const at = (x: number, y: number): Point => project(leg, 0, [x, y]);
  const wet = one.placed?.state === 'wet';
  if (one.zone === 'corner') return cornerUpstand(job, panel);
  switch (one.layer) {
    case 'primer':
      return along(
        [panel('jamb', 0, top - 0.6, wet ? 'primer-wet' : 'primer-dry')],
        at(reach / 2, top - 2),
      );
    case 'tape':
      return along(
        [panel('jamb', upstand - 2, upstand, 'release-paper')],
        at(reach / 2, upstand - 1),
      );
    case 'end-dam':
      return along(
        [panel('jamb', 0, upstand, 'tone')],
        at(reach * 0.6, upstand * 0.5),
        dimensionOf(one, 'height', at(reach, 0), at(reach, upstand), [-1, 0]),
      );
    case 'membrane': {
      const lap = measureOf(wall, one, 'lap', 2);
      return along(
        [panel('jamb', upstand - lap, top, 'tone'), turned(job, upstand - lap, -turnOut, 'tone')],
        at(reach * 0.4, top - 1),
        dimensionOf(one, 'lap', at(0, upstand - lap), at(0, upstand), [1, 0]),
      );
    }
    case 'weather-barrier': {
      const lap = measureOf(wall, one, 'lap', 4);
      const out = (u: number, y: number): Point => project(leg, u, [reach, y]);
      const edge = lap - turnOut;
      const below = belowOf(wall.scene);
      const outline = [
        out(-besideOpening, -below),
        out(edge, -below),
        out(edge, top),
        out(-besideOpening, top),
      ];
      return along(
        [shapeOf(one, 'beside', outline, paint('medium', 'barrier'))],
        out(-besideOpening + 1.2, top - 2),
        dimensionOf(one, 'lap', out(-turnOut, top), out(edge, top), [0, 1]),
      );
    }
    case 'lap-sealant': {
      const line = [at(0, upstand), at(reach, upstand)];
      return along([shapeOf(one, 'jamb', line, paint('heavy'), false)], at(reach * 0.8, upstand));
    }
    default:
      return along([panel('jamb', 0, top - 0.6, 'brushed')], at(reach * 0.3, top - 3.5));
  }
}

/** The jamb's sheet where it turns out onto the face of the wall. */
const turned = ({ wall, plan, one }: RunJob, from: number, u: number, fill: Fill): Shape => {
  const leg = plan.legs[0]!;
  const { reach, top } = wall.scene;
  const at = (along: number, y: number): Point => project(leg, along, [reach, y]);
  return shapeOf(
    one,
    'turned',
    [at(u, from), at(0, from), at(0, top), at(u, top)],
    paint('medium', fill),
  );
};

export function upstandOf(wall: Wall): number {
  const dam = plannedOn(wall, 'end-dam').findLast(({ zone }) => zone === 'jambs');
  return dam ? measureOf(wall, dam, 'height', 6) : 6;
}

function cornerUpstand(
  { wall, plan, one }: RunJob,
  panel: (name: string, y0: number, y1: number, fill: Fill) => Shape,
): Along {
  const lap = cornerLapOf(wall);
  const wet = one.placed?.state === 'wet';
  const leg = plan.legs[0]!;
  const spot = project(leg, 0, [wall.scene.reach / 2, cornerLeg - 1]);
  switch (one.layer) {
    case 'primer':
      return along(
        [panel('up', cornerLeg - lap - 0.5, cornerLeg, wet ? 'primer-wet' : 'primer-dry')],
        spot,
      );
    case 'tape':
      return along([panel('up', cornerLeg - lap, cornerLeg, 'release-paper')], spot);
    case 'corner-piece':
      return along([panel('up', 0, cornerLeg, 'corner')], spot);
    case 'lap-sealant': {
      const line = [project(leg, 0, [0, 0]), project(leg, 0, [wall.scene.reach, 0])];
      return along([shapeOf(one, 'fold', line, paint('heavy'), false)], line[1]);
    }
    default:
      return along([], undefined);
  }
}
