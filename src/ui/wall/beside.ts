import { type Point, distance } from '#engine/picture/point.ts';

const room = 24;
const aside = 13;

/** Marks that would hide each other stand to the right and left of their line by turns. */
export function beside(points: readonly Point[]): readonly Point[] {
  let turn = 1;
  return points.map((point, place) => {
    const isClose = points.some((other, nth) => nth !== place && distance(other, point) < room);
    if (!isClose) return point;
    turn = -turn;
    return [point[0] - aside * turn, point[1]];
  });
}
