import type { Site } from '#engine/method/site.ts';
import { backingSolids, depthOf } from './backing.ts';
import { paint } from './paint.ts';
import { type Point, rectangle } from './point.ts';
import { type Scene, type Solid, backingOf } from './scene.ts';
import { cavity, veneerGhost, wythe } from './veneer.ts';

const bottom = -4.2;
/** The foundation is broken off here, so that the ground 6 in down (BIA 28B) can be shown. */
const broken = -2.2;
const grade = -3.1;

/** A backup wall and its veneer on one foundation, the ground 6 in below the flashing. */
export function wallBase(site: Site, top: number): Scene {
  const backing = backingOf(site);
  const depth = depthOf(backing);
  const reach = cavity + wythe;
  const concrete = (low: number, high: number, mark?: Point): Solid => ({
    what: 'foundation',
    points: rectangle(-depth, low, reach, high),
    closed: true,
    paint: paint('medium', 'concrete'),
    mark,
  });
  const foundation = [
    concrete(broken + 0.2, 0, [0.6, -1]),
    concrete(bottom, broken - 0.2),
    ...[broken + 0.2, broken - 0.2].map((y) => breakLine(-depth, reach, y)),
  ];
  const earth: Solid = {
    what: 'earth',
    points: rectangle(reach, bottom, reach + 1.6, grade),
    closed: true,
    paint: paint('none', 'earth'),
    mark: [reach + 0.9, grade - 0.4],
    isThin: true,
  };
  const ground: Solid = {
    what: 'earth',
    points: [
      [reach, grade],
      [reach + 1.6, grade],
    ],
    closed: false,
    paint: paint('heavy'),
    mark: undefined,
  };
  return {
    assembly: 'wall-base',
    built: [earth, ground, ...foundation, ...backingSolids(backing, 0, top)],
    later: veneerGhost(0.2, top),
    face: [
      { at: [0, top], v: -top },
      { at: [0, 0], v: 0 },
      { at: [reach, 0], v: reach },
      { at: [reach, bottom], v: reach - bottom },
    ],
    proud: [],
    reach,
    top,
    bottom,
    depth,
  };
}

/** A long break across something that goes on. */
const breakLine = (left: number, right: number, y: number): Solid => ({
  what: 'foundation',
  points: [
    [left, y],
    [right - 2.4, y],
    [right - 2.1, y + 0.3],
    [right - 1.8, y - 0.3],
    [right - 1.5, y],
    [right + 0.3, y],
  ],
  closed: false,
  paint: paint('thin'),
  mark: undefined,
});
