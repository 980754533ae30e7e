/** A point of a view in inches of the wall: x to the right, y up. */
export type Point = readonly [x: number, y: number];

export const add = (a: Point, b: Point): Point => [a[0] + b[0], a[1] + b[1]];
export const subtract = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1]];
export const scale = (a: Point, by: number): Point => [a[0] * by, a[1] * by];
export const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1];
export const distance = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

export const between = (a: Point, b: Point, part = 0.5): Point => [
  a[0] + (b[0] - a[0]) * part,
  a[1] + (b[1] - a[1]) * part,
];

/** The direction of a vector; of no length, none. */
export const unit = (a: Point): Point => {
  const length = Math.hypot(a[0], a[1]);
  return length === 0 ? [0, 0] : [a[0] / length, a[1] / length];
};

/** A quarter turn to the left. */
export const left = (a: Point): Point => [-a[1], a[0]];

export const rectangle = (x: number, y: number, toX: number, toY: number): readonly Point[] => [
  [x, y],
  [toX, y],
  [toX, toY],
  [x, toY],
];

/** The point half-way along a line. */
export function middleOf(line: readonly Point[]): Point {
  const lengths = line.slice(1).map((point, index) => distance(line[index]!, point));
  let rest = lengths.reduce((sum, length) => sum + length, 0) / 2;
  for (const [index, length] of lengths.entries()) {
    if (rest <= length && length > 0) return between(line[index]!, line[index + 1]!, rest / length);
    rest -= length;
  }
  return line[0] ?? [0, 0];
}

export type Bounds = {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
};

export const boundsOf = (points: readonly Point[]): Bounds => ({
  left: Math.min(...points.map(([x]) => x)),
  right: Math.max(...points.map(([x]) => x)),
  bottom: Math.min(...points.map(([, y]) => y)),
  top: Math.max(...points.map(([, y]) => y)),
});
