/** Walls and sheets from the front. */
import type { Text } from '#engine/text.ts';
import { dimension } from './dimension.ts';
import { box, breakAt, label, line } from './marks.ts';
import { within, width, type Measured } from './measured.ts';
import type { Mark, Point } from './sketch.ts';

const wallName = { en: 'wall', es: 'muro' };
const backName = { en: 'back of the sheet', es: 'reverso de la membrana' };

/** The two faces that primer goes on, one under the other. */
export function twoFaces(of: Measured): readonly Mark[] {
  const [left, right, high] = [24, width - 62, 74];
  const face = (top: number, name: Text): readonly Mark[] => [
    box([left, top], [right, top + high], 'primer', 'plain'),
    label([(left + right) / 2, top + high / 2], name),
    ...breakAt(right - 62, top, top + high),
    ...dimension(
      [
        [right, top],
        [right, top + high],
      ],
      'right',
      right + 30,
      of.text('girth'),
    ),
  ];
  return [
    ...dimension(
      [
        [left, 46],
        [right, 46],
      ],
      'above',
      20,
      of.text('run'),
    ),
    ...face(46, wallName),
    ...face(46 + high + 20, backName),
  ];
}

/** Studs with strap across them, in pieces. */
export function strapElevation(of: Measured): readonly Mark[] {
  const [left, right, top, bottom] = [16, width - 16, 62, 176];
  const step = 46;
  const studs = [0, 1, 2, 3, 4.6, 5.6, 6.6].map((times) => left + 5 + times * step * 0.985);
  const strap = [top + 44, top + 66] as const;
  const joint = studs[2]! + 5;
  const strapBox = (from: number, to: number): Mark =>
    box([from, strap[0]], [to, strap[1]], 'metal', 'plain');
  return [
    ...studs.map((x) => box([x, top], [x + 10, bottom], 'paper', 'plain')),
    strapBox(left, joint),
    strapBox(joint, right),
    ...breakAt((studs[3]! + studs[4]! + 10) / 2, top, bottom),
    ...dimension(
      [
        [studs[0]! + 5, top],
        [studs[1]! + 5, top],
      ],
      'above',
      top - 18,
      of.text('stud-spacing'),
      'second',
    ),
    ...dimension(
      [
        [left, strap[1]],
        [joint, strap[1]],
      ],
      'below',
      strap[1] + 24,
      of.text('piece'),
    ),
    ...dimension(
      [
        [left, bottom],
        [right, bottom],
      ],
      'below',
      bottom + 26,
      of.text('run'),
    ),
  ];
}

const [brick, course] = [40, 20];

/** Courses of brick in running bond between two heights, the lowest first. */
function courses(left: number, right: number, bottom: number, many: number): readonly Mark[] {
  return Array.from({ length: many }, (_, row): readonly Mark[] => {
    const [low, high] = [bottom - row * course, bottom - (row + 1) * course];
    const joints: number[] = [];
    for (let x = left + (row % 2 === 0 ? brick : brick / 2); x < right; x += brick) joints.push(x);
    return [
      box([left, high], [right, low], 'none', 'thin'),
      ...joints.map((x) =>
        line(
          [
            [x, high],
            [x, low],
          ],
          'thin',
        ),
      ),
    ];
  }).flat();
}

/** Open head joints in the first course over the flashing. */
export function weepElevation(of: Measured): readonly Mark[] {
  const [left, right, base] = [16, width - 16, 128];
  const weeps = [left + 4, left + 4 + brick * 2, right - 4];
  const weep = (x: number): Mark => box([x - 4, base - course], [x + 4, base], 'solid', 'none');
  const at = (x: number): Point => [x, base];
  return [
    ...courses(left, right, base, 4),
    ...weeps.map(weep),
    line(
      [
        [left - 6, base + 2],
        [right + 6, base + 2],
      ],
      'heavy',
    ),
    ...breakAt(left + brick * 4.5, base - course * 4, base + 4),
    ...dimension([at(weeps[0]!), at(weeps[1]!)], 'below', base + 30, of.text('spacing')),
    ...dimension([at(left), at(right)], 'below', base + 58, of.text('run')),
  ];
}

/** An opening, the sheet over it, turned up at both ends. */
export function endDamElevation(of: Measured): readonly Mark[] {
  const [centre, base] = [width / 2, 150];
  const half = 76;
  const bearing = within((half * 2 * of.size('bearing')) / of.size('opening'), 30, 48);
  const dam = 26;
  const [left, right] = [centre - half, centre + half];
  const [start, finish] = [left - bearing, right + bearing];
  return [
    ...courses(12, width - 12, base, 4),
    box([left, base], [right, base + 62], 'paper', 'plain'),
    line(
      [
        [12, base],
        [12, base + 62],
      ],
      'thin',
    ),
    line(
      [
        [width - 12, base],
        [width - 12, base + 62],
      ],
      'thin',
    ),
    line(
      [
        [start, base - dam],
        [start, base - 2],
        [finish, base - 2],
        [finish, base - dam],
      ],
      'heavy',
    ),
    ...dimension(
      [
        [left, base + 62],
        [right, base + 62],
      ],
      'below',
      base + 86,
      of.text('opening'),
    ),
    ...dimension(
      [
        [right, base],
        [finish, base],
      ],
      'below',
      base + 28,
      of.text('bearing'),
    ),
    ...dimension(
      [
        [start, base - dam],
        [start, base],
      ],
      'left',
      start - 14,
      of.text('dam'),
      'first',
    ),
  ];
}
