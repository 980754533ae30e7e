/**
 * A place on each line for a label of one size, clear of the boxes and of the other labels as far as
 * can be: each in turn moves to where it covers least, a few times over. O(lines x (boxes + lines)).
 */
import type { Box, OrderDiagram, Point } from './diagram.ts';

/** Half-way first, then ever farther from it. */
const parts = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82, 0.1, 0.9];

const rounds = 4;

/** By place in `lines`, each the place of an edge of the diagram. */
export function placeLabels(
  { nodes, edges, width }: OrderDiagram,
  lines: readonly number[],
  size: { readonly width: number; readonly height: number },
): readonly Box[] {
  const placed: Box[] = [];
  const choices = lines.map((line) =>
    parts.map((part): Box => {
      const [x, y] = pointAlong(edges[line]!.line, part);
      const left = Math.min(width - size.width, x - size.width / 2);
      return { x: Math.max(0, left), y: y - size.height / 2, ...size };
    }),
  );
  for (let round = 0; round < rounds; round += 1) {
    for (const [at, boxes] of choices.entries()) {
      const others = [...nodes, ...placed.filter((_, other) => other !== at)];
      const covered = boxes.map((box) =>
        others.reduce((sum, other) => sum + overlapOf(box, other), 0),
      );
      placed[at] = boxes[covered.indexOf(Math.min(...covered))]!;
    }
  }
  return placed;
}

const overlapOf = (a: Box, b: Box): number =>
  Math.max(0, Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x)) *
  Math.max(0, Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y));

/** `part` of the way down a line that never runs level or up. */
function pointAlong(line: readonly Point[], part: number): Point {
  const [first, last] = [line[0]!, line.at(-1)!];
  const y = first[1] + (last[1] - first[1]) * part;
  const at = Math.max(
    1,
    line.findIndex((point) => point[1] >= y),
  );
  const [from, to] = [line[at - 1]!, line[at]!];
  return [from[0] + ((to[0] - from[0]) * (y - from[1])) / (to[1] - from[1]), y];
}
