import type { Layer } from '#engine/method/drawing.ts';
import { dimensionOf, shapeOf } from './laid.ts';
import { given, measureOf } from './measures.ts';
import { paint } from './paint.ts';
import { edgeOf, outlineOf, pointAt } from './patch.ts';
import { project } from './plan.ts';
import { type Point, middleOf } from './point.ts';
import { type Along, type RunJob, along, filled } from './run-job.ts';
import { endDamAlong, sealantAlong } from './run-ends.ts';
import { backDamAlong, slopeAlong } from './run-built-up.ts';
import { pieceLap, sheetAlong } from './run-sheet.ts';
import { fastenersAlong, weepsAlong } from './run-stations.ts';

type Draw = (job: RunJob) => Along;

/** Where a patch is named: some way along it, half-way down. */
export function spotOf({ wall, plan, patches }: RunJob, part = 0.5): Point | undefined {
  const patch = patches.find(({ leg }) => leg === 0) ?? patches[0];
  if (!patch) return undefined;
  const u = patch.u0 + (patch.u1 - patch.u0) * part;
  return middleOf(edgeOf(plan.legs, wall.face, patch, u));
}

const plain =
  (inked: ReturnType<typeof paint>, part = 0.5): Draw =>
  (job) =>
    along(filled(job, inked), spotOf(job, part));

const primer: Draw = (job) => {
  const wet = job.one.placed?.state === 'wet';
  return along(
    filled(job, wet ? paint('thin', 'primer-wet') : paint('hair', 'primer-dry')),
    spotOf(job, 0.12),
  );
};

const snapLine: Draw = (job) => {
  const { wall, plan, one, patches } = job;
  const shapes = patches.map((patch, index) => {
    const leg = plan.legs[patch.leg]!;
    const at = pointAt(wall.face, patch.v0);
    return shapeOf(
      one,
      `line.${index}`,
      [project(leg, patch.u0, at), project(leg, patch.u1, at)],
      paint('medium', 'none', 'snapped'),
      false,
    );
  });
  const leg = plan.legs[0]!;
  const end = leg.mitre === 0 ? 0 : leg.length;
  const [x] = pointAt(wall.face, -wall.height);
  const top = project(leg, end, [x, wall.height]);
  const foot = project(leg, end, [x, 0]);
  return along(
    shapes,
    project(leg, leg.length * 0.3, [x, wall.height]),
    dimensionOf(one, 'height', foot, top, [-1, 0]),
  );
};

const strip =
  (inked: ReturnType<typeof paint>, part: number): Draw =>
  (job) => {
    const { wall, plan, one, patches } = job;
    const patch = patches[0];
    const [from, to] = patch
      ? [patch.v0, patch.v1].map((v) =>
          project(plan.legs[patch.leg]!, patch.u1, pointAt(wall.face, v)),
        )
      : [];
    return along(
      filled(job, inked),
      spotOf(job, part),
      from && to ? dimensionOf(one, 'width', to, from, [plan.corner ? -1 : 1, 0]) : [],
    );
  };

/** Tape keeps its paper until a sheet is on it, or a step pulls it. */
const tape: Draw = (job) => {
  const { wall, one } = job;
  const zones = one.zone === 'top-edge' ? ['top-edge', 'wall'] : [one.zone];
  const bare = wall.applied.some(
    ({ layer, zone, at }) =>
      at > one.at && (layer === 'bare-tape' || layer === 'membrane') && zones.includes(zone),
  );
  const laid = strip(paint('medium', bare ? 'tape' : 'release-paper'), 0.7)(job);
  return { ...laid, dimensions: [...laid.dimensions, ...pieceLap(job)] };
};

const bareTape: Draw = (job) => strip(paint('thin', 'tape'), 0.6)(job);

const mastic: Draw = (job) => along(filled(job, paint('thin', 'mastic')), spotOf(job, 0.35));

const barrier: Draw = (job) => {
  const { wall, plan, one, patches } = job;
  const leg = plan.legs[0]!;
  const end = leg.mitre === 0 ? leg.length : leg.length;
  const foot = patches[0]?.v1 ?? 0;
  const side: Point = leg.mitre === 0 ? [1, 0] : [-1, 0];
  return along(
    filled(job, paint('medium', 'barrier')),
    spotOf(job, 0.4),
    dimensionOf(
      one,
      'lap',
      project(leg, end, [0, -foot]),
      project(leg, end, [0, wall.height]),
      side,
    ),
  );
};

/** Passes of the roller: strokes across the patch. */
const rolled =
  (dash: 'rolled' | 'solid', step: number): Draw =>
  (job) => {
    const { wall, plan, one, patches } = job;
    const shapes = patches.flatMap((patch, index) => {
      const count = Math.max(1, Math.floor((patch.u1 - patch.u0) / step));
      const gap = (patch.u1 - patch.u0) / count;
      return Array.from({ length: count }, (_, i) => {
        const inset = Math.min(0.4, (patch.v1 - patch.v0) / 6);
        const stroke = { ...patch, v0: patch.v0 + inset, v1: patch.v1 - inset };
        const u = patch.u0 + gap * (i + 0.5);
        const line = edgeOf(plan.legs, wall.face, stroke, u);
        return shapeOf(one, `stroke.${index}.${i}`, line, paint('hair', 'none', dash), false);
      });
    });
    return along(shapes, spotOf(job, 0.8));
  };

const dripEdge: Draw = (job) => {
  const { wall, plan, one } = job;
  const { face } = wall;
  const { reach } = wall.scene;
  const out = measureOf(wall, one, 'projection', 0.25);
  const shapes = plan.legs.flatMap((leg, index) => {
    const at = (far: boolean, x: number, y: number): Point =>
      project(leg, far ? leg.length : leg.mitre * x, [x, y]);
    const on = outlineOf(plan.legs, face, {
      leg: index,
      u0: 0,
      u1: leg.length,
      v0: reach - 3,
      v1: reach,
    });
    const [x, tip] = [reach + out, reach + out + 0.42];
    const kick = [at(false, x, 0), at(false, tip, -0.42), at(true, tip, -0.42), at(true, x, 0)];
    const flat = [at(false, reach, 0), at(false, x, 0), at(true, x, 0), at(true, reach, 0)];
    return [
      shapeOf(one, `leg.${index}`, on, paint('thin', 'metal')),
      shapeOf(one, `edge.${index}`, flat, paint('thin', 'paper')),
      shapeOf(one, `kick.${index}`, kick, paint('medium', 'metal')),
    ];
  });
  const leg = plan.legs[0]!;
  const lap = given(one, 'lap') ? measureOf(wall, one, 'lap', 2) : undefined;
  return along(
    [...shapes, ...(lap === undefined ? [] : dripLap(job, lap))],
    project(leg, leg.length * 0.2, [reach + out, 0]),
    lap === undefined ? [] : lapDimension(job, lap),
  );
};

const lapPart = 0.35;

/** Two pieces of metal, one over the other. */
const dripLap = ({ wall, plan, one }: RunJob, lap: number) => {
  const leg = plan.legs[0]!;
  const { reach } = wall.scene;
  const at = (u: number) => [project(leg, u, [reach - 3, 0]), project(leg, u, [reach + 0.25, 0])];
  const u = leg.length * lapPart;
  return [
    shapeOf(one, 'lap.over', at(u), paint('medium'), false),
    shapeOf(one, 'lap.under', at(u + lap), paint('thin', 'none', 'hidden'), false),
  ];
};

const lapDimension = ({ wall, plan, one }: RunJob, lap: number) => {
  const leg = plan.legs[0]!;
  const u = leg.length * lapPart;
  const at = (along: number): Point => project(leg, along, [wall.scene.reach + 0.25, 0]);
  return dimensionOf(one, 'lap', at(u), at(u + lap), [0, -1]);
};

const protection: Draw = (job) => along(filled(job, paint('thin', 'protection')), spotOf(job, 0.9));

export const runLayers: Readonly<Record<Layer, Draw>> = {
  'clean-face': plain(paint('hair', 'brushed'), 0.9),
  strap: strip(paint('medium', 'metal'), 0.85),
  'snap-line': snapLine,
  slope: slopeAlong,
  'back-dam': backDamAlong,
  'drip-edge': dripEdge,
  primer,
  tape,
  'bare-tape': bareTape,
  'corner-piece': plain(paint('medium', 'corner'), 0.5),
  membrane: sheetAlong,
  pressed: rolled('solid', 1),
  rolled: rolled('rolled', 2.4),
  bar: strip(paint('medium', 'bar'), 0.5),
  fasteners: fastenersAlong,
  'lap-sealant': sealantAlong,
  mastic,
  'end-dam': endDamAlong,
  'weather-barrier': barrier,
  weeps: weepsAlong,
  protection,
};
