import { type Box, crosses, overlap } from './box.ts';
import type { Keynote, Part } from './drawing.ts';
import { type Point, add, distance, scale } from './point.ts';

/** A mark in its balloon, led to what it names: on paper, y runs down, in pixels. */
export type PlacedKeynote = {
  readonly part: string;
  readonly mark: string;
  readonly at: Point;
  readonly centre: Point;
};

export const balloon = 11;
const rings = [27, 40, 55, 72, 92, 116] as const;
const turns = 20;

/**
 * Sets the balloons one after the other, each at the free place nearest to what it names, the first
 * come first served, so that they stay where they are as the work goes on; off the `busy` spots where
 * there is room. O(n²) with about a hundred
 * places each; what finds no place stands on its point.
 */
export function placeKeynotes(
  keynotes: readonly Keynote[],
  parts: ReadonlyMap<string, Part>,
  toPaper: (point: Point) => Point,
  size: { readonly width: number; readonly height: number },
  taken: readonly Box[],
  busy: readonly Point[],
): readonly PlacedKeynote[] {
  const named = keynotes.filter(({ part }) => parts.has(part));
  const points = named.map(({ at }) => toPaper(at));
  const placed: PlacedKeynote[] = [];
  named.forEach(({ part, standsOn }, index) => {
    const { mark } = parts.get(part)!;
    const at = points[index]!;
    const first = standsOn ? [at] : [];
    const centre = bestOf([...first, ...around(at)], (candidate) =>
      costOf(at, candidate, { size, taken, placed, points: near(at, [...points, ...busy]) }),
    );
    placed.push({ part, mark, at, centre });
  });
  return placed;
}

const around = (at: Point): readonly Point[] =>
  rings.flatMap((far) =>
    Array.from({ length: turns }, (_, i): Point => {
      const angle = -Math.PI / 4 + (2 * Math.PI * i) / turns;
      return add(at, scale([Math.cos(angle), Math.sin(angle)], far));
    }),
  );

/** Those that a balloon for this point could come to lie on. */
const near = (at: Point, points: readonly Point[]): readonly Point[] =>
  points.filter((point) => isWithin(point, at, rings.at(-1)! + balloon + 3));

/** No place costs less than its distance, and they come the nearest first. */
function bestOf(candidates: readonly Point[], cost: (candidate: Point) => Cost): Point {
  let best = candidates[0]!;
  let least = Infinity;
  for (const candidate of candidates) {
    const { distance: far, rest } = cost(candidate);
    if (far >= least) break;
    const whole = far + rest();
    if (whole < least) [best, least] = [candidate, whole];
  }
  return best;
}

type Cost = { readonly distance: number; readonly rest: () => number };

type Paper = {
  readonly size: { readonly width: number; readonly height: number };
  readonly taken: readonly Box[];
  readonly placed: readonly PlacedKeynote[];
  readonly points: readonly Point[];
};

const blocked = 1e6;
const room = balloon * 2 + 3;

function costOf(at: Point, centre: Point, { size, taken, placed, points }: Paper): Cost {
  return {
    distance: distance(at, centre),
    rest: () => {
      const edge = balloon + 1;
      const [x, y] = centre;
      if (x < edge || y < edge || x > size.width - edge || y > size.height - edge) {
        return blocked * 2;
      }
      const near = taken.filter((box) => distance(box.centre, centre) < box.width / 2 + room);
      const hits =
        placed.filter((other) => isWithin(other.centre, centre, room)).length +
        near.filter((box) => overlap(box, boxOf(centre))).length;
      if (hits > 0) return hits * blocked;
      const hides = points.filter((point) => isWithin(point, centre, balloon + 3)).length;
      const crossed =
        placed.filter((other) => isNear(other.centre, at, centre)).length +
        near.filter((box) => crosses(box, at, centre)).length;
      return Math.min(hides, 3) * 22 + crossed * 60 + (x < at[0] ? 14 : 0);
    },
  };
}

/** Without a square root: this is asked many thousand times. */
const isWithin = (a: Point, b: Point, reach: number): boolean =>
  (a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2 < reach * reach;

const boxOf = (centre: Point): Box => ({
  centre,
  width: balloon * 2 + 4,
  height: balloon * 2 + 4,
  turn: 0,
});

/** Whether a line from a to b runs through the balloon at a point. */
function isNear(point: Point, a: Point, b: Point): boolean {
  const way: Point = [b[0] - a[0], b[1] - a[1]];
  const length = way[0] ** 2 + way[1] ** 2;
  const along =
    length === 0 ? 0 : ((point[0] - a[0]) * way[0] + (point[1] - a[1]) * way[1]) / length;
  const part = Math.min(1, Math.max(0, along));
  return isWithin(point, [a[0] + way[0] * part, a[1] + way[1] * part], balloon + 2);
}
