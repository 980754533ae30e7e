import type { Applied } from './applied.ts';
import { dimensionOf, shapeOf } from './laid.ts';
import { given, measureOf } from './measures.ts';
import { paint } from './paint.ts';
import { pointAt } from './patch.ts';
import { type Point, add, left, scale, subtract, unit } from './point.ts';
import { type Surface, stretch } from './surface.ts';
import type { Wall } from './wall.ts';

const length = 2.6;

/**
 * The paper as it comes off the tape, at its angle to the sheet: 0 along it, 180 folded back. Shown
 * while the sheet is the last thing that was laid.
 */
export function releasePaper(wall: Wall, one: Applied, under: Surface) {
  const latest = Math.max(...wall.applied.map(({ at }) => at));
  if (!given(one, 'release') || one.at !== latest) return { shapes: [], dimensions: [] };
  const angle = (measureOf(wall, one, 'release', 45) * Math.PI) / 180;
  const middle = (under[0]!.v + under.at(-1)!.v) / 2;
  const end = stretch(under, middle, under.at(-1)!.v)[0]!.at;
  const [before, after] = [middle - 0.01, middle].map((v) => pointAt(wall.scene.face, v));
  const ahead = unit(subtract(after!, before!));
  const outward = left(ahead);
  const way = add(scale(ahead, Math.cos(angle)), scale(outward, Math.sin(angle)));
  const tip = add(end, scale(way, length));
  const across = scale(left(way), 0.05);
  const strip = [add(end, across), add(tip, across), subtract(tip, across), subtract(end, across)];
  const arc = Array.from({ length: 9 }, (_, i): Point => {
    const turn = (angle * i) / 8;
    const ray = add(scale(ahead, Math.cos(turn)), scale(outward, Math.sin(turn)));
    return add(end, scale(ray, 1.5));
  });
  return {
    shapes: [
      shapeOf(one, 'paper', strip, paint('medium', 'release-paper')),
      shapeOf(
        one,
        'sheet-line',
        [end, add(end, scale(ahead, 1.9))],
        paint('hair', 'none', 'hidden'),
        false,
      ),
      shapeOf(one, 'angle', arc, paint('thin'), false),
    ],
    dimensions: dimensionOf(one, 'release', arc[4]!, arc[4]!, undefined),
  };
}
