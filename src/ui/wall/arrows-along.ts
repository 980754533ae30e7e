import { type Point, between, distance } from '#engine/picture/point.ts';

export type Arrow = {
  readonly at: Point;
  /** Clockwise on paper, in degrees; 0 points to the right. */
  readonly turn: number;
  /** How far along the line, from 0 to 1. */
  readonly along: number;
};

/** Where arrow heads sit on a line: the first after half of `every` pixels, then one for each. */
export function arrowsAlong(line: readonly Point[], every: number): readonly Arrow[] {
  const lengths = line.slice(1).map((to, index) => distance(line[index]!, to));
  const total = lengths.reduce((sum, length) => sum + length, 0);
  const arrows: Arrow[] = [];
  let passed = 0;
  lengths.forEach((length, index) => {
    const [from, to] = [line[index]!, line[index + 1]!];
    const turn = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
    for (;;) {
      const next = every * (arrows.length + 0.5);
      if (length === 0 || next > passed + length) break;
      const at = between(from, to, (next - passed) / length);
      arrows.push({ at, turn, along: next / total });
    }
    passed += length;
  });
  return arrows;
}
