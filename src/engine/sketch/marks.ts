/** What drawings are put together from. */
import type { Text } from '#engine/text.ts';
import type { Circle, Fill, Lettering, Mark, Path, Point, Weight } from './sketch.ts';

export const line = (points: readonly Point[], weight: Weight = 'plain'): Path => ({
  kind: 'path',
  points,
  closed: false,
  weight,
  fill: 'none',
  dashed: false,
});

export const dashed = (points: readonly Point[], weight: Weight = 'thin'): Path => ({
  ...line(points, weight),
  dashed: true,
});

export const shape = (
  points: readonly Point[],
  fill: Fill = 'none',
  weight: Weight = 'plain',
): Path => ({ kind: 'path', points, closed: true, weight, fill, dashed: false });

/** From its upper left corner to its lower right one. */
export const box = (
  [left, top]: Point,
  [right, bottom]: Point,
  fill: Fill = 'none',
  weight: Weight = 'plain',
): Path =>
  shape(
    [
      [left, top],
      [right, top],
      [right, bottom],
      [left, bottom],
    ],
    fill,
    weight,
  );

export const disc = (
  centre: Point,
  radius: number,
  fill: Fill = 'none',
  weight: Weight = 'plain',
): Circle => ({ kind: 'circle', centre, radius, weight, fill });

export const label = (
  at: Point,
  text: Text,
  anchor: Lettering['anchor'] = 'middle',
  turn: Lettering['turn'] = 0,
): Lettering => ({ kind: 'lettering', at, text, anchor, turn });

/** A zigzag across what is too long to draw whole, from one point to another. */
export function breakLine([x1, y1]: Point, [x2, y2]: Point): Path {
  const [dx, dy] = [x2 - x1, y2 - y1];
  const length = Math.hypot(dx, dy);
  const [ux, uy] = [dx / length, dy / length];
  const at = (along: number, aside: number): Point => [
    x1 + ux * along - uy * aside,
    y1 + uy * along + ux * aside,
  ];
  const middle = length / 2;
  return line(
    [
      at(-5, 0),
      at(middle - 6, 0),
      at(middle - 2, 6),
      at(middle + 2, -6),
      at(middle + 6, 0),
      at(length + 5, 0),
    ],
    'thin',
  );
}

/** A gap of paper between two zigzags, across a band that runs from left to right. */
export const breakAt = (x: number, top: number, bottom: number): readonly Mark[] => [
  box([x - 6, top - 3], [x + 6, bottom + 3], 'paper', 'none'),
  breakLine([x - 6, top], [x - 6, bottom]),
  breakLine([x + 6, top], [x + 6, bottom]),
];

/** A line that leads from a text to what it speaks of, and ends there in a dot. */
export const leader = (from: Point, to: Point): readonly Mark[] => [
  line([from, to], 'thin'),
  disc(to, 1.8, 'solid', 'none'),
];
