import { describe, expect, test } from 'vitest';
import type { Point } from '#engine/picture/point.ts';
import { arrowsAlong } from '#ui/wall/arrows-along.ts';
import { beside } from '#ui/wall/beside.ts';
import { fromPaper } from '#ui/wall/to-paper.ts';

describe('truth', () => {
  test('arrows point along the line and lie evenly on it', () => {
    const line: readonly Point[] = [
      [0, 0],
      [30, 0],
      [30, 30],
    ];
    expect(arrowsAlong(line, 20)).toEqual([
      { at: [10, 0], turn: 0, along: 1 / 6 },
      { at: [30, 0], turn: 0, along: 0.5 },
      { at: [30, 20], turn: 90, along: 50 / 60 },
    ]);
  });

  test('a line of no length has no arrow', () => {
    expect(
      arrowsAlong(
        [
          [1, 1],
          [1, 1],
        ],
        20,
      ),
    ).toEqual([]);
  });

  test('marks that would hide each other stand on either side', () => {
    const [a, b, far] = beside([
      [50, 0],
      [50, 10],
      [50, 80],
    ]);
    expect(Math.sign(a![0] - 50)).toBe(-Math.sign(b![0] - 50));
    expect(far).toEqual([50, 80]);
  });

  test('a point on paper goes back to the inches it came from', () => {
    const toPaper = ([x, y]: Point): Point => [12 + 20 * x, 300 - 20 * y];
    for (const point of [
      [0, 0],
      [3, -2],
      [-1.5, 8],
    ] as const) {
      const [x, y] = fromPaper(toPaper, toPaper(point));
      expect(x).toBeCloseTo(point[0]);
      expect(y).toBeCloseTo(point[1]);
    }
  });
});
