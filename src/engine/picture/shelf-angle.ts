import type { Site } from '#engine/method/site.ts';
import { backingSolids, depthOf } from './backing.ts';
import { paint } from './paint.ts';
import { type Point, rectangle } from './point.ts';
import { type Scene, type Solid, backingOf } from './scene.ts';
import { brickBelow, cavity, veneerGhost, wythe } from './veneer.ts';

const bottom = -5.4;
const steel = 0.375;
/** A 5 x 5 x 3/8 in angle bolted to the edge of a floor: common practice. */
const leg = 5;
const beamTop = 6;
const beamBottom = -3.8;

/** Where the section is cut a bolt's head stands out of the steel. */
const boltHead: Scene['proud'] = [
  [
    { at: [steel, 2.95], v: -2.95 },
    { at: [steel + 0.3, 2.95], v: -2.95 },
    { at: [steel + 0.3, 2.05], v: -2.05 },
    { at: [steel, 2.05], v: -2.05 },
  ],
];

export function shelfAngle(site: Site, top: number): Scene {
  const backing = backingOf(site);
  const depth = depthOf(backing);
  const reach = cavity + wythe;
  const angle: readonly Point[] = [
    [0, leg],
    [steel, leg],
    [steel, 0],
    [leg, 0],
    [leg, -steel],
    [0, -steel],
  ];
  const solid = (
    what: Solid['what'],
    points: readonly Point[],
    fill: Solid['paint']['fill'],
    mark?: Point,
  ): Solid => ({ what, points, closed: true, paint: paint('medium', fill), mark });
  const thin = (...of: Parameters<typeof solid>): Solid => ({ ...solid(...of), isThin: true });
  return {
    assembly: 'shelf-angle',
    built: [
      ...backingSolids(backing, beamTop, top),
      ...backingSolids(backing, bottom, beamBottom).map((each) => ({ ...each, mark: undefined })),
      solid('concrete', rectangle(-depth, beamBottom, 0, beamTop), 'concrete', [-1.7, -2.5]),
      ...brickBelow(bottom, -steel - 0.5),
      thin('soft-joint', rectangle(reach - 0.9, -steel - 0.5, reach, -0.02), 'sealant', [
        reach - 0.2,
        -0.6,
      ]),
      thin('angle', angle, 'metal', [1.2, -steel / 2]),
      {
        ...thin('bolt', rectangle(-2.6, 2.35, steel + 0.3, 2.65), 'solid', [-2.2, 2.5]),
        paint: paint('none', 'solid'),
      },
      solid('bolt', rectangle(steel, 2.05, steel + 0.3, 2.95), 'metal'),
    ],
    later: veneerGhost(0.2, top),
    face: [
      { at: [0, top], v: -top },
      { at: [0, leg], v: -leg },
      { at: [steel, leg - 0.3], v: -leg + 0.3 },
      { at: [steel, 0], v: 0 },
      { at: [0.5, 0], v: 0.5 },
      { at: [reach, 0], v: reach },
      { at: [reach, bottom], v: reach - bottom },
    ],
    proud: boltHead,
    reach,
    top,
    bottom,
    depth,
  };
}
