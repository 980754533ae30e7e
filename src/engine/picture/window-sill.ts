import type { Site } from '#engine/method/site.ts';
import { paint } from './paint.ts';
import { type Point, rectangle } from './point.ts';
import { type Scene, type Solid, backingOf } from './scene.ts';

const bottom = -6.6;
/** From the back dam's face out to the face of the sheathing: a 6 in opening, common practice. */
const reach = 5.5;
/** What the back dam stands on. */
export const damDepth = 0.75;

/** The foot of a rough opening, inside to the left: the pan's floor runs out over the face below. */
export function windowSill(site: Site, top: number): Scene {
  const backing = backingOf(site);
  const framed = backing === 'steel-stud' || backing === 'wood-stud';
  return {
    assembly: 'window-sill',
    built: [...(framed ? framedSill(backing) : solidSill(backing)), ...barrierBelow],
    later: windowGhost(top),
    face: [
      { at: [-damDepth, 0], v: -top - damDepth },
      { at: [0, 0], v: 0 },
      { at: [reach, 0], v: reach },
      { at: [reach, bottom], v: reach - bottom },
    ],
    proud: [],
    reach,
    top,
    bottom,
    depth: damDepth,
  };
}

const solid = (
  what: Solid['what'],
  points: readonly Point[],
  fill: Solid['paint']['fill'],
  mark?: Point,
): Solid => ({ what, points, closed: true, paint: paint('medium', fill), mark });

const sheathing = 0.625;

const framedSill = (backing: 'steel-stud' | 'wood-stud'): readonly Solid[] => {
  const inside = reach - sheathing;
  const stud = backing === 'steel-stud' ? 'stud' : 'wood-stud';
  return [
    {
      ...solid(stud, rectangle(-damDepth, bottom, inside, -1.5), 'paper', [inside / 2, -4]),
      paint: paint('thin', 'paper'),
    },
    {
      ...solid('wallboard', rectangle(-damDepth - sheathing, bottom, -damDepth, 0), 'sheathing', [
        -damDepth - sheathing / 2,
        -5.6,
      ]),
      isThin: true,
    },
    solid('sill', rectangle(-damDepth, -1.5, inside, 0), 'wood', [inside / 2, -0.75]),
    solid('sheathing', rectangle(inside, bottom, reach, 0), 'sheathing', [
      inside + sheathing / 2,
      -5,
    ]),
  ];
};

const solidSill = (backing: 'concrete-masonry' | 'concrete'): readonly Solid[] => [
  backing === 'concrete'
    ? solid('concrete', rectangle(-damDepth, bottom, reach, 0), 'concrete', [reach / 2, -4])
    : solid('block', rectangle(-damDepth, bottom, reach, 0), 'masonry', [reach / 2, -4]),
];

const barrierBelow: readonly Solid[] = [
  {
    what: 'barrier-below',
    points: [
      [reach + 0.04, -0.1],
      [reach + 0.04, bottom],
    ],
    closed: false,
    paint: paint('medium', 'none', 'hidden'),
    mark: [reach + 0.04, bottom + 0.8],
    isThin: true,
  },
];

const windowGhost = (top: number): readonly Solid[] => {
  const ghost = (points: readonly Point[], mark?: Point): Solid => ({
    what: 'window',
    points,
    closed: true,
    paint: paint('hair', 'none', 'ghost'),
    mark,
  });
  return [
    ghost(rectangle(1, 0.9, 4, 3.2)),
    ghost(rectangle(1.5, 3.2, 3.5, 4.8), [2.5, 4]),
    ghost(rectangle(2.3, 4.8, 2.7, top)),
  ];
};
