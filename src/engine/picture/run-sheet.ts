import type { Applied } from './applied.ts';
import type { Dimension, Shape } from './drawing.ts';
import { dimensionOf, shapeOf } from './laid.ts';
import { paint } from './paint.ts';
import { type Patch, edgeOf, firstOf, outlineOf, pointAt } from './patch.ts';
import { type Plan, project } from './plan.ts';
import { type Point, middleOf } from './point.ts';
import { toeOf } from './range.ts';
import { cornerLeg, cornerLapOf, seamOf, spliceAt } from './run-extent.ts';
import { type Along, type RunJob, along } from './run-job.ts';
import { type Wall, isComplete, zonesOf } from './wall.ts';

/** The sheet seen on the wall: its edges, its fold at the transition, and mouths in an open lap. */
export function sheetAlong(job: RunJob): Along {
  const { wall, plan, one, patches } = job;
  const { face } = wall;
  const shapes = patches.flatMap((patch, index) => [
    shapeOf(one, `sheet.${index}`, outlineOf(plan.legs, face, patch), paint('none', 'tone')),
    ...outline(wall, plan, one, patch, index),
    ...fold(wall, plan, one, patch, index),
  ]);
  const patch = patches[0];
  return along(
    [...shapes, ...mouths(wall, plan, one, patches)],
    patch && middleOf(edgeOf(plan.legs, face, patch, patch.u0 + (patch.u1 - patch.u0) * 0.45)),
    one.zone === 'seam' ? seamDimensions(wall, plan, one) : pieceLap(job),
  );
}

/** Only true edges are inked: pieces of one sheet run into each other. */
function outline(
  wall: Wall,
  plan: Plan,
  one: Applied,
  patch: Patch,
  index: number,
): readonly Shape[] {
  const { face } = wall;
  const leg = plan.legs[patch.leg]!;
  const line = (name: string, points: readonly Point[]): Shape =>
    shapeOf(one, `${name}.${index}`, points, paint('medium'), false);
  const across = (v: number): readonly Point[] => {
    const at = pointAt(face, v);
    return [project(leg, firstOf(leg, patch.u0, at[0]), at), project(leg, patch.u1, at)];
  };
  const isTop = Math.abs(patch.v0 + wall.height) < 0.01;
  const isToe = Math.abs(patch.v1 - Math.min(toeOf(wall), wall.scene.reach)) < 0.01;
  const starts = patch.u0 > 0 || leg.mitre === 0;
  return [
    ...(isTop ? [line('top', across(patch.v0))] : []),
    ...(isToe ? [line('toe', across(patch.v1))] : []),
    ...(starts ? [line('start', edgeOf(plan.legs, face, patch, patch.u0))] : []),
    line('end', edgeOf(plan.legs, face, patch, patch.u1)),
  ];
}

function fold(
  { face }: Wall,
  plan: Plan,
  one: Applied,
  patch: Patch,
  index: number,
): readonly Shape[] {
  if (patch.v0 >= 0 || patch.v1 <= 0) return [];
  const leg = plan.legs[patch.leg]!;
  const at = pointAt(face, 0);
  const line = [project(leg, firstOf(leg, patch.u0, at[0]), at), project(leg, patch.u1, at)];
  return [shapeOf(one, `fold.${index}`, line, paint('thin'), false)];
}

/** How far a sheet, or the tape for it, reaches onto a corner piece. */
export function pieceLap({ wall, plan, one }: RunJob): readonly Dimension[] {
  const onPiece = one.zone !== 'seam' && one.zone !== 'front-edge' && one.zone !== 'jambs';
  if (!onPiece || zonesOf(wall, 'corner-piece').size === 0) return [];
  const leg = plan.legs[0]!;
  const sill = wall.scene.assembly === 'window-sill';
  const on = pointAt(wall.face, sill ? wall.scene.reach : -wall.height);
  const [from, to] = [cornerLeg - cornerLapOf(wall), cornerLeg].map((u) => project(leg, u, on));
  return dimensionOf(one, 'lap', from!, to!, [0, sill ? -1 : 1]);
}

function seamDimensions(wall: Wall, plan: Plan, one: Applied) {
  const seam = seamOf(wall, plan);
  if (!seam) return [];
  const leg = plan.legs[0]!;
  const at = (u: number, v: number): Point => project(leg, u, pointAt(wall.face, v));
  const toe = Math.min(toeOf(wall), wall.scene.reach);
  return [
    ...dimensionOf(one, 'lap', at(seam.over, -wall.height), at(seam.under, -wall.height), [0, 1]),
    ...dimensionOf(one, 'setback', at(seam.under, toe), at(spliceAt(leg.length), toe), [0, -1]),
  ];
}

/** A lap that was not pressed and rolled all along stands open here and there. */
function mouths(wall: Wall, plan: Plan, one: Applied, patches: readonly Patch[]): readonly Shape[] {
  const edges = openEdges(wall, plan, one, patches);
  const places = [-wall.height * 0.55, wall.scene.reach * (plan.corner === 'inside' ? 0.3 : 0.45)];
  return edges.flatMap(({ leg, u, side }, index) =>
    places.map((v, i) => {
      const mouth = 1.1;
      const at = (along: number, down: number): Point =>
        project(plan.legs[leg]!, along, pointAt(wall.face, down));
      const lens = Array.from({ length: 9 }, (_, step): Point => {
        const part = step / 8;
        return at(u + side * 0.75 * Math.sin(Math.PI * part), v - mouth + 2 * mouth * part);
      });
      return shapeOf(one, `mouth.${index}.${i}`, lens, paint('medium', 'solid'));
    }),
  );
}

/** Edges of this sheet that lie in a lap, and the side on which the sheet is. */
function openEdges(wall: Wall, plan: Plan, { zone }: Applied, patches: readonly Patch[]) {
  const open = (at: 'seam' | 'corner'): boolean =>
    !isComplete(wall, 'pressed', [at]) || !isComplete(wall, 'rolled', [at]);
  if (zone === 'seam') {
    const seam = seamOf(wall, plan);
    return seam && open('seam') ? [{ leg: 0, u: seam.over, side: 1 }] : [];
  }
  const laps = zonesOf(wall, 'corner-piece').size > 0 && plan.corner && open('corner');
  const start = cornerLeg - cornerLapOf(wall);
  return laps
    ? patches.filter(({ u0 }) => u0 === start).map(({ leg, u0 }) => ({ leg, u: u0, side: 1 }))
    : [];
}
