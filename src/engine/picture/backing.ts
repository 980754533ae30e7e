import { paint } from './paint.ts';
import { type Point, rectangle } from './point.ts';
import type { Backing, Solid } from './scene.ts';

/** How thick each backing is, with its sheathing and wallboard, in inches: common practice. */
const thickness: Readonly<Record<Backing, number>> = {
  'steel-stud': 4.875,
  'wood-stud': 4.75,
  'concrete-masonry': 7.625,
  concrete: 6,
};

export const depthOf = (backing: Backing): number => thickness[backing];

/** The wall behind the face x = 0, cut from `bottom` to `top`. */
export function backingSolids(backing: Backing, bottom: number, top: number): readonly Solid[] {
  switch (backing) {
    case 'steel-stud':
      return [...studs('stud', 3.625, bottom, top), ...track(bottom)];
    case 'wood-stud':
      return [...studs('wood-stud', 3.5, bottom, top), ...plate(bottom)];
    case 'concrete-masonry':
      return masonry(bottom, top);
    case 'concrete':
      return [solid('concrete', rectangle(-6, bottom, 0, top), 'concrete', [-3, top - 2])];
  }
}

const solid = (
  what: Solid['what'],
  points: readonly Point[],
  fill: Solid['paint']['fill'],
  mark?: Point,
): Solid => ({ what, points, closed: true, paint: paint('medium', fill), mark });

const sheathing = 0.625;

function studs(
  what: 'stud' | 'wood-stud',
  width: number,
  bottom: number,
  top: number,
): readonly Solid[] {
  const back = -sheathing - width;
  const line = (x: number): Solid => ({
    what,
    points: [
      [x, bottom],
      [x, top],
    ],
    closed: false,
    paint: paint('hair'),
    mark: undefined,
  });
  return [
    {
      ...solid(what, rectangle(back, bottom, -sheathing, top), 'paper', [
        back + width / 2,
        top - 2,
      ]),
      paint: paint('thin', 'paper'),
    },
    ...(what === 'stud' ? [line(back + 0.3), line(-sheathing - 0.3)] : []),
    solid('wallboard', rectangle(back - sheathing, bottom, back, top), 'sheathing'),
    solid('sheathing', rectangle(-sheathing, bottom, 0, top), 'sheathing', [-0.3125, top - 4.5]),
  ];
}

/** The channel that the studs stand in. */
const track = (bottom: number): readonly Solid[] => [
  {
    what: 'stud',
    points: [
      [-4.25, bottom + 1.25],
      [-4.25, bottom + 0.06],
      [-0.66, bottom + 0.06],
      [-0.66, bottom + 1.25],
    ],
    closed: false,
    paint: paint('heavy'),
    mark: undefined,
  },
];

const plate = (bottom: number): readonly Solid[] => [
  solid('wood-stud', rectangle(-4.125, bottom, -0.625, bottom + 1.5), 'wood'),
];

/** Hollow units of 8 in courses: the shells are cut, the cores are seen into. */
function masonry(bottom: number, top: number): readonly Solid[] {
  const courses = Math.ceil((top - bottom) / 8);
  const shell = 1.25;
  return Array.from({ length: courses }, (_, course) => {
    const low = bottom + course * 8;
    const high = Math.min(low + 7.625, top);
    const bed = Math.min(low + 8, top);
    const mark: Point | undefined = bed === top ? [-3.8, top - 2] : undefined;
    return [
      solid('block', rectangle(-7.625, low, -7.625 + shell, high), 'masonry'),
      {
        ...solid('block', rectangle(-6.375, low, -shell, high), 'paper', mark),
        paint: paint('hair', 'paper'),
      },
      solid('block', rectangle(-shell, low, 0, high), 'masonry'),
      ...(bed > high
        ? [
            {
              ...solid('block', rectangle(-7.625, high, -6.375, bed), 'mortar'),
              paint: paint('hair', 'mortar'),
            },
            {
              ...solid('block', rectangle(-shell, high, 0, bed), 'mortar'),
              paint: paint('hair', 'mortar'),
            },
          ]
        : []),
    ];
  }).flat();
}
