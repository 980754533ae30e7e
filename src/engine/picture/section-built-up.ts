import type { Applied } from './applied.ts';
import { type Laid, dimensionOf, nothing, shapeOf } from './laid.ts';
import { riseOf } from './face.ts';
import { measureOf } from './measures.ts';
import { paint } from './paint.ts';
import { type Point, rectangle } from './point.ts';
import { type Surface, pointsOf, splice, stretch } from './surface.ts';
import type { Wall } from './wall.ts';
import { damDepth } from './window-sill.ts';

const cosine = Math.SQRT1_2;

/** A wedge that falls to the outside: by so many in a hundred, or by an angle. */
export function laySlope(wall: Wall, one: Applied, surface: Surface): Laid {
  const { reach } = wall.scene;
  const rise = riseOf(wall, one, reach);
  const under = stretch(surface, 0, reach);
  const top: Point = [under[0]!.at[0], under[0]!.at[1] + rise];
  const over = [{ at: top, v: 0 }, under.at(-1)!];
  return {
    shapes: [shapeOf(one, 'body', [...pointsOf(under), top], paint('medium', 'mortar'))],
    surface: splice(surface, 0, reach, over),
    dimensions: dimensionOf(
      one,
      'slope',
      [reach * 0.45, rise * 0.55],
      [reach * 0.45, rise * 0.55],
      undefined,
    ),
    at: [reach * 0.7, top[1] * 0.3],
  };
}

/** A block along the inside edge of the sill. */
export function layBackDam(wall: Wall, one: Applied, surface: Surface): Laid {
  if (wall.scene.assembly !== 'window-sill') return nothing(surface);
  const height = measureOf(wall, one, 'height', 1);
  const inside = surface[0]!;
  const floor = stretch(surface, 0, 0.001)[0]!.at[1];
  const top = floor + height;
  const over = [
    { at: [-damDepth, top] as Point, v: -height - damDepth },
    { at: [0, top] as Point, v: -height },
    { at: [0, floor] as Point, v: 0 },
  ];
  return {
    shapes: [shapeOf(one, 'body', rectangle(-damDepth, 0, 0, top), paint('medium', 'wood'))],
    surface: [inside, ...over, ...surface.filter(({ v }) => v > 0)],
    dimensions: dimensionOf(one, 'height', [0, floor], [0, top], [-1, 0]),
    at: [-damDepth / 2, top],
  };
}

const back = 3;
const drop = 0.6;

/** Sheet metal on the outer part of the shelf, past the face and bent down 45 degrees (BIA 7B). */
export function layDripEdge(wall: Wall, one: Applied, surface: Surface): Laid {
  const { reach } = wall.scene;
  const out = measureOf(wall, one, 'projection', 0.25);
  const thick = 0.1;
  const on = stretch(surface, reach - back, reach - back + 0.001)[0]!.at[1];
  const tip: Point = [reach + out + drop * cosine, on - drop * cosine];
  const hem: Point = [tip[0] - 0.05, tip[1] - 0.16];
  const under = stretch(surface, reach - back, reach);
  const body: readonly Point[] = [
    ...pointsOf(under),
    [reach + out - 0.04, on],
    hem,
    [tip[0] + 0.06, tip[1] - 0.06],
    [reach + out + 0.04, on + thick],
    [reach - back, on + thick],
  ];
  const over = [
    { at: [reach - back, on + thick] as Point, v: reach - back },
    { at: [reach, on + thick] as Point, v: reach },
    { at: [reach + out + 0.04, on + thick] as Point, v: reach + out },
    { at: [tip[0] + 0.06, tip[1] - 0.06] as Point, v: reach + out + drop },
    { at: hem, v: reach + out + drop },
  ];
  return {
    shapes: [shapeOf(one, 'body', body, paint('medium', 'metal'))],
    surface: splice(surface, reach - back, reach + out + drop, over),
    dimensions: dimensionOf(one, 'projection', [reach, on], [reach + out, on], [0, -1]),
    at: [tip[0], tip[1]],
  };
}
