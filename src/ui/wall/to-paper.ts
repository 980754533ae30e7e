import type { Point } from '#engine/picture/point.ts';

/** From inches of a view to pixels of its paper. */
export type ToPaper = (point: Point) => Point;

/** The way back: paper is scaled alike both ways, its y turned. */
export function fromPaper(toPaper: ToPaper, [x, y]: Point): Point {
  const [left, top] = toPaper([0, 0]);
  const scale = toPaper([1, 0])[0] - left;
  return [(x - left) / scale, (top - y) / scale];
}
