import { type Point, add, dot, scale, subtract } from './point.ts';

/** A rectangle on paper, turned by an angle: y runs down, lengths are those of the paper. */
export type Box = {
  readonly centre: Point;
  readonly width: number;
  readonly height: number;
  /** Clockwise as seen, in degrees. */
  readonly turn: number;
};

const axesOf = ({ turn }: Box): readonly [Point, Point] => {
  const angle = (turn * Math.PI) / 180;
  const along: Point = [Math.cos(angle), Math.sin(angle)];
  return [along, [-along[1], along[0]]];
};

export function cornersOf(box: Box): readonly Point[] {
  const [along, across] = axesOf(box);
  const [a, b] = [scale(along, box.width / 2), scale(across, box.height / 2)];
  return [
    subtract(subtract(box.centre, a), b),
    subtract(add(box.centre, a), b),
    add(add(box.centre, a), b),
    add(subtract(box.centre, a), b),
  ];
}

/** Whether two boxes share more than an edge: no side of either parts them (separating axis test). */
export function overlap(a: Box, b: Box): boolean {
  const apart = Math.hypot(a.centre[0] - b.centre[0], a.centre[1] - b.centre[1]);
  if (apart * 2 > a.width + a.height + b.width + b.height) return false;
  const [p, q] = [cornersOf(a), cornersOf(b)];
  return [...axesOf(a), ...axesOf(b)].every((axis) => {
    const [low, high] = reach(p, axis);
    const [from, to] = reach(q, axis);
    return low < to - 1e-6 && from < high - 1e-6;
  });
}

const reach = (points: readonly Point[], axis: Point): readonly [number, number] => {
  const along = points.map((point) => dot(point, axis));
  return [Math.min(...along), Math.max(...along)];
};

/** Whether a line from a to b runs through the box. */
export function crosses(box: Box, a: Point, b: Point): boolean {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const line: Box = {
    centre: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2],
    width: length,
    height: 0.5,
    turn: (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI,
  };
  return overlap(box, line);
}
