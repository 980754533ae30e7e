import { type Point, add, scale } from './point.ts';
import type { Corner } from './scene.ts';

/**
 * How a length of wall is set on paper. A straight run is an oblique: its face is seen square, so
 * that heights and spacings are true, and the shelf runs down to the left. A corner is an isometric:
 * lengths along the wall, up it and out from it are all true.
 */
export type Plan = { readonly legs: readonly Leg[]; readonly corner: Corner | undefined };

/** One straight side. `u` counts from the corner, or from the left end, along it. */
export type Leg = {
  readonly along: Point;
  readonly out: Point;
  readonly length: number;
  /** How the start runs as one goes out from the face: 1 inward at an inside corner, -1 beyond. */
  readonly mitre: number;
  /** Whether its far end is seen as a cut. */
  readonly cut: boolean;
};

const up: Point = [0, 1];
const oblique: Point = [-0.45, -0.65];
const east: Point = [Math.sqrt(3) / 2, 0.5];
const south: Point = [Math.sqrt(3) / 2, -0.5];
const back = (way: Point): Point => scale(way, -1);

export const straightPlan = (length: number): Plan => ({
  legs: [{ along: [1, 0], out: oblique, length, mitre: 0, cut: true }],
  corner: undefined,
});

export const cornerPlan = (corner: Corner, length: number): Plan =>
  corner === 'outside'
    ? {
        legs: [
          { along: back(south), out: back(east), length, mitre: -1, cut: false },
          { along: east, out: south, length, mitre: -1, cut: false },
        ],
        corner,
      }
    : {
        legs: [
          { along: back(east), out: south, length, mitre: 1, cut: true },
          { along: south, out: back(east), length, mitre: 1, cut: true },
        ],
        corner,
      };

/** Where a point stands on paper: `u` along the leg, `x` out from the face, `y` up. */
export const project = (leg: Leg, u: number, [x, y]: Point): Point =>
  add(add(scale(leg.along, u), scale(leg.out, x)), scale(up, y));

/** The start of a leg at a distance out from the face, cut to the corner's mitre. */
export const startOf = ({ mitre }: Leg, x: number): number => mitre * x;
