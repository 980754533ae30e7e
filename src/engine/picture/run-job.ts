import type { Applied } from './applied.ts';
import type { Dimension, Shape } from './drawing.ts';
import { shapeOf } from './laid.ts';
import type { Paint } from './paint.ts';
import { type Patch, outlineOf } from './patch.ts';
import type { Plan } from './plan.ts';
import { patchesOf } from './run-extent.ts';
import type { Point } from './point.ts';
import type { Wall } from './wall.ts';

/** A layer to be drawn along the run. */
export type RunJob = {
  readonly wall: Wall;
  readonly plan: Plan;
  readonly one: Applied;
  readonly patches: readonly Patch[];
};

export type Along = {
  readonly shapes: readonly Shape[];
  readonly dimensions: readonly Dimension[];
  readonly at: Point | undefined;
};

export const jobOf = (wall: Wall, plan: Plan, one: Applied): RunJob => ({
  wall,
  plan,
  one,
  patches: patchesOf(wall, plan, one),
});

export const along = (
  shapes: readonly Shape[],
  at: Point | undefined,
  dimensions: readonly Dimension[] = [],
): Along => ({ shapes, at, dimensions });

/** Each patch filled. */
export const filled = ({ wall, plan, one, patches }: RunJob, inked: Paint): readonly Shape[] =>
  patches.map((patch, index) =>
    shapeOf(one, `patch.${index}`, outlineOf(plan.legs, wall.face, patch), inked),
  );
