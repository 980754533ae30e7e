import type { Applied } from './applied.ts';
import { type Lay, bead, drawnThickness, noted, onFace, pointAt } from './coats.ts';
import { type Laid, dimensionOf, shapeOf } from './laid.ts';
import { measureOf } from './measures.ts';
import { paint } from './paint.ts';
import { type Point, add, rectangle, scale } from './point.ts';
import { type Surface, offset, pointsOf, splice, stretch } from './surface.ts';

export const bar: Lay = onFace((wall, one, surface, [from, to]) => {
  const thick = measureOf(wall, one, 'thickness', drawnThickness.bar);
  const under = stretch(surface, from, to);
  const out = Math.max(...under.map(({ at }) => at[0]));
  const [high, low] = [under[0]!, under.at(-1)!];
  const over = [high, low].map(({ at, v }) => ({ at: [out + thick, at[1]] as Point, v }));
  return {
    shapes: [
      shapeOf(
        one,
        'body',
        rectangle(out, low.at[1], out + thick, high.at[1]),
        paint('medium', 'metal'),
      ),
    ],
    surface: splice(surface, from, to, over),
    dimensions: noted(one, 'thickness', [out + thick, (low.at[1] + high.at[1]) / 2]),
    at: [out + thick, (low.at[1] + high.at[1]) / 2 - 0.25],
  };
});

const shank = 1.6;

export const fasteners: Lay = onFace((_, one, surface, [from, to]) => {
  const middle = (from + to) / 2;
  const on = pointAt(surface, middle);
  const level = middle < 0;
  const into: Point = level ? [-1, 0] : [0, -1];
  const across: Point = level ? [0, 1] : [1, 0];
  const at = (along: number, aside: number): Point =>
    add(on, add(scale(into, along), scale(across, aside)));
  const threads = Array.from({ length: 7 }, (_, i) => 0.25 + i * 0.2).flatMap((deep): Point[] => [
    at(deep, 0.12),
    at(deep + 0.1, -0.12),
  ]);
  const head = offset(stretch(surface, from, to), 0.16);
  return {
    shapes: [
      shapeOf(
        one,
        'shank',
        [at(0, 0.07), at(shank, 0.05), at(shank + 0.22, 0), at(shank, -0.05), at(0, -0.07)],
        paint('none', 'solid'),
      ),
      shapeOf(one, 'threads', threads, paint('thin'), false),
      shapeOf(
        one,
        'head',
        [...pointsOf(stretch(surface, from, to)), ...pointsOf(head).toReversed()],
        paint('medium', 'solid'),
      ),
    ],
    surface: splice(surface, from, to, head),
    dimensions: [],
    at: add(on, scale(into, -0.16)),
  };
});

export const lapSealant: Lay = onFace((wall, one, surface, [from, to]) => {
  if (wall.scene.assembly === 'window-sill') return onDam(one, surface, wall.height);
  const under = stretch(surface, from, to);
  const [a, b] = [under[0]!, under.at(-1)!];
  const out = Math.max(...under.map(({ at }) => at[0]));
  const width = measureOf(wall, one, 'width', 0.25);
  const round = Array.from({ length: 7 }, (_, i) => (Math.PI * i) / 12).map((angle) => {
    const part = Math.sin(angle);
    const fall = 1 - Math.cos(angle);
    return {
      at: [a.at[0] + (out + 0.1 - a.at[0]) * part, a.at[1] + (b.at[1] - a.at[1]) * fall] as Point,
      v: a.v + (b.v - a.v) * fall,
    };
  });
  const over = [...round, { at: [out + 0.08, b.at[1]] as Point, v: b.v }, b];
  return {
    shapes: [
      shapeOf(
        one,
        'body',
        [...pointsOf(under), ...pointsOf(over).toReversed()],
        paint('medium', 'sealant'),
      ),
    ],
    surface: splice(surface, from, to, over),
    dimensions: dimensionOf(one, 'width', a.at, [a.at[0] + width, a.at[1]], undefined),
    at: round[3]!.at,
  };
});

/** A bead that the window will sit against, on top of the back dam. */
const onDam = (one: Applied, surface: Surface, height: number): Laid =>
  bead(one, surface, [-height - 0.65, -height - 0.1], 0.35, paint('medium', 'sealant'));
