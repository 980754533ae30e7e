import { type Point, between, distance, dot, subtract } from './point.ts';

/** How far a point is from a line, and the length along the line to where it is nearest. */
export type Nearest = { readonly distance: number; readonly along: number };

/** Of points equally near the first; a line of one point is that point. O(points). */
export function nearestOn(line: readonly Point[], point: Point): Nearest {
  let best: Nearest = { distance: distance(line[0]!, point), along: 0 };
  let passed = 0;
  line.slice(1).forEach((to, piece) => {
    const from = line[piece]!;
    const at = nearestOfPiece(from, to, point);
    const far = distance(at, point);
    if (far < best.distance) best = { distance: far, along: passed + distance(from, at) };
    passed += distance(from, to);
  });
  return best;
}

function nearestOfPiece(from: Point, to: Point, point: Point): Point {
  const way = subtract(to, from);
  const length = dot(way, way);
  if (length === 0) return from;
  return between(from, to, Math.min(1, Math.max(0, dot(subtract(point, from), way) / length)));
}
