import type { Applied } from './applied.ts';
import { type Laid, dimensionOf, nothing, shapeOf } from './laid.ts';
import type { Paint } from './paint.ts';
import { type Point, middleOf } from './point.ts';
import { type Range, rangeOf } from './range.ts';
import {
  type Surface,
  drape,
  endsOf,
  offset,
  pointsOf,
  resample,
  splice,
  stretch,
} from './surface.ts';
import type { Wall } from './wall.ts';

export type Lay = (wall: Wall, one: Applied, surface: Surface) => Laid;

/** How thick layers are drawn where no setting says so: thicker than life, to be told apart. */
export const drawnThickness = {
  primer: 0.1,
  tape: 0.16,
  bar: 0.2,
  strap: 0.1,
  barrier: 0.12,
  protection: 0.5,
} as const;

export const left: Point = [-1, 0];

export const down: Point = [0, -1];

export const onFace =
  (lay: (wall: Wall, one: Applied, surface: Surface, range: Range) => Laid): Lay =>
  (wall, one, surface) => {
    const range = rangeOf(wall, one);
    return range ? lay(wall, one, surface, range) : nothing(surface);
  };

/** A layer of one thickness that follows the face. */
export function coat(
  { scene }: Wall,
  one: Applied,
  surface: Surface,
  [from, to]: Range,
  thickness: number,
  inked: Paint,
): Laid {
  const under = stretch(surface, from, to);
  const over = offset(under, thickness, endsOf(scene.face, from, to));
  return {
    shapes: [shapeOf(one, 'body', [...pointsOf(under), ...pointsOf(over).toReversed()], inked)],
    surface: splice(surface, from, to, over),
    dimensions: [],
    at: middleOf(pointsOf(over)),
  };
}

/** A half-round of so much height. */
export function bead(
  one: Applied,
  surface: Surface,
  range: Range,
  height: number,
  inked: Paint,
): Laid {
  const [from, to] = range;
  const [middle, half] = [(from + to) / 2, (to - from) / 2];
  const under = stretch(surface, from, to);
  const round = (v: number): number =>
    height * Math.sqrt(Math.max(0, 1 - ((v - middle) / half) ** 2));
  const over = offset(resample(under, half / 5), round);
  return {
    shapes: [shapeOf(one, 'body', [...pointsOf(under), ...pointsOf(over).toReversed()], inked)],
    surface: splice(surface, from, to, over),
    dimensions: [],
    at: middleOf(pointsOf(over)),
  };
}

export function sheetCoat(
  one: Applied,
  surface: Surface,
  range: Range,
  thick: number,
  inked: Paint,
): Laid {
  const [from, to] = range;
  const under = drape(stretch(surface, from, to));
  const over = offset(under, thick);
  return {
    shapes: [shapeOf(one, 'body', [...pointsOf(under), ...pointsOf(over).toReversed()], inked)],
    surface: splice(surface, from, to, over),
    dimensions: [],
    at: middleOf(pointsOf(over)),
  };
}

/** A line along the face that adds nothing to it. */
export const trace = (inked: Paint, away: number): Lay =>
  onFace((_, one, surface, [from, to]) => {
    const line = pointsOf(offset(drape(stretch(surface, from, to)), away));
    return {
      ...nothing(surface),
      shapes: [shapeOf(one, 'line', line, inked, false)],
      at: middleOf(line),
    };
  });

export const pointAt = (surface: Surface, v: number): Point => stretch(surface, v, v + 1e-6)[0]!.at;

/** The same, but as high or as far out as `v` says, whatever a sheet below makes of it. */
export function measuredAt(surface: Surface, v: number): Point {
  const [x, y] = pointAt(surface, v);
  return v < 0 ? [x, -v] : [v, y];
}

/** Across a strip, on one side of it. */
export function acrossStrip(one: Applied, surface: Surface, [from, to]: Range) {
  const [a, b] = [measuredAt(surface, from), measuredAt(surface, to)];
  return from < 0
    ? dimensionOf(one, 'width', a, [a[0], b[1]], left)
    : dimensionOf(one, 'width', a, [b[0], a[1]], down);
}

/** A measure too small, or of no length, to stand between two arrows. */
export const noted = (one: Applied, measure: 'thickness' | 'release' | 'slope', at: Point) =>
  dimensionOf(one, measure, at, at, undefined);
