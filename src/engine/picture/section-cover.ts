import { type Lay, drawnThickness, left, onFace, pointAt, sheetCoat } from './coats.ts';
import { dimensionOf, nothing, shapeOf } from './laid.ts';
import { measureOf } from './measures.ts';
import { paint } from './paint.ts';
import { type Point, add, rectangle } from './point.ts';
import { transitionReach } from './range.ts';
import { stretch } from './surface.ts';
import { cavity } from './veneer.ts';

export const barrier: Lay = onFace((wall, one, surface, range) => {
  const [from, to] = range;
  const laid = sheetCoat(one, surface, range, drawnThickness.barrier, paint('medium', 'barrier'));
  const foot = stretch(laid.surface, from, to).at(-1)!.at;
  return {
    ...laid,
    dimensions: dimensionOf(one, 'lap', [foot[0], wall.height], [foot[0], -to], left),
    at: [foot[0], Math.max(foot[1] + 0.3, -to + 0.5)],
  };
});

const netHeight = 2.2;

/** A board that stands clear of what it covers; on the shelf alone, a net in the cavity. */
export const protection: Lay = onFace((_, one, surface, [from, to]) => {
  const covered = stretch(surface, from, to);
  const [high, end] = [covered[0]!.at, covered.at(-1)!.at];
  const thick = drawnThickness.protection;
  const bend = stretch(surface, 0, 0.001)[0]!.at;
  const x = clear(
    covered.filter(({ v }) => v < 0).map(({ at }) => at[0]),
    bend[0],
  );
  const y = clear(
    covered.filter(({ v }) => v > 0).map(({ at }) => at[1]),
    bend[1],
  );
  const corner: Point = [x, y];
  const points: readonly Point[] =
    from < -transitionReach
      ? [
          [corner[0], high[1]],
          corner,
          [end[0], y],
          [end[0], y + thick],
          [corner[0] + thick, y + thick],
          [corner[0] + thick, high[1]],
        ]
      : rectangle(corner[0], y, Math.max(corner[0] + 0.6, cavity - 0.1), y + netHeight);
  return {
    ...nothing(surface),
    shapes: [shapeOf(one, 'body', points, paint('thin', 'protection'))],
    at: from < -transitionReach ? [end[0] - 1, y + thick] : [corner[0] + 0.6, y + netHeight],
  };
});

const clear = (of: readonly number[], least: number): number => Math.max(least, ...of) + 0.12;

/** Cut through an open joint or a wick: a way out along the sheet, with an arrow. */
export const weeps: Lay = (wall, one, surface) => {
  const { reach, assembly } = wall.scene;
  if (assembly === 'window-sill') return nothing(surface);
  const on = pointAt(surface, reach - 1)[1];
  const level = on + 0.45;
  const tip: Point = [reach + 1, level];
  return {
    ...nothing(surface),
    shapes: [
      shapeOf(one, 'body', rectangle(2, on, reach, on + 2.4), paint('medium', 'paper')),
      shapeOf(one, 'way', [[2.4, level], tip], paint('medium'), false),
      shapeOf(
        one,
        'tip',
        [tip, add(tip, [-0.5, 0.18]), add(tip, [-0.5, -0.18])],
        paint('none', 'solid'),
      ),
    ],
    at: [reach - 0.4, on + 1.8],
  };
};

/** Seen beyond the cut: the end turned up across the shelf. */
export const endDam: Lay = (wall, one, surface) => {
  if (one.zone !== 'ends' && one.zone !== 'jambs') return nothing(surface);
  const height = measureOf(wall, one, 'height', 1);
  const { reach } = wall.scene;
  const on = pointAt(surface, reach / 2)[1];
  const edge = Math.min(reach, pointAt(surface, reach)[0]);
  return {
    ...nothing(surface),
    beyond: [
      shapeOf(
        one,
        'body',
        rectangle(pointAt(surface, -2)[0], on, edge, on + height),
        paint('thin', 'far'),
      ),
    ],
    dimensions: dimensionOf(one, 'height', [edge, on], [edge, on + height], [1, 0]),
    at: [edge - 0.6, on + height],
  };
};
