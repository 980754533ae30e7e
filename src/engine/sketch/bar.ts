/** Termination bar from the front. Nothing that is asked for can be counted: the middle is left out. */
import { dimension } from './dimension.ts';
import { box, breakAt, disc, line } from './marks.ts';
import { within, width, type Measured } from './measured.ts';
import type { Mark, Point } from './sketch.ts';

const half = 10;

const fastener = ([x, y]: Point): readonly Mark[] => [
  disc([x, y], 5, 'paper'),
  line(
    [
      [x - 3, y],
      [x + 3, y],
    ],
    'plain',
  ),
];

/** Where the fasteners at the beginning of a bar go: the first from the end, then spaced. */
function fastenersFrom(start: number, way: 1 | -1, of: Measured, many: number): readonly number[] {
  const spacing = of.has('spacing') ? of.size('spacing') : 0.2;
  const end = of.has('end') ? of.size('end') : spacing / 3;
  const step = 58;
  const first = within((step * end) / spacing, 20, 34);
  return Array.from({ length: many }, (_, place) => start + way * (first + place * step));
}

function bar(left: number, right: number, y: number): Mark {
  return box([left, y - half], [right, y + half], 'metal', 'plain');
}

export function barElevation(of: Measured): readonly Mark[] {
  const [left, right, y] = [48, width - 48, 76];
  const start = fastenersFrom(left, 1, of, 2);
  const finish = fastenersFrom(right, -1, of, 2);
  return [
    bar(left, right, y),
    ...[...start, ...finish].flatMap((x) => fastener([x, y])),
    ...breakAt((start.at(-1)! + finish.at(-1)!) / 2, y - half, y + half),
    ...spacings(of, left, start, y - half, y - 42, 'first'),
    ...(of.has('end') ? spacings(of, right, finish.slice(0, 1), y - half, y - 42, 'first') : []),
    ...dimension(
      [
        [left, y + half],
        [right, y + half],
      ],
      'below',
      y + 38,
      of.text('length'),
    ),
  ];
}

/** The end distance and the first spacing over a row of fasteners. */
function spacings(
  of: Measured,
  end: number,
  [first, second]: readonly number[],
  top: number,
  at: number,
  beyond: 'first' | 'second',
): readonly Mark[] {
  const from = (x: number): Point => [x, top];
  return [
    ...(of.has('end') && first !== undefined
      ? dimension([from(end), from(first)], 'above', at, of.text('end'), beyond)
      : []),
    ...(of.has('spacing') && first !== undefined && second !== undefined
      ? dimension([from(first), from(second)], 'above', at, of.text('spacing'))
      : []),
  ];
}

export function barRunElevation(of: Measured): readonly Mark[] {
  const y = 108;
  const gap = of.has('gap') ? 12 : 3;
  const pieces = [
    [46, 158],
    [158 + gap, 266],
    [266 + gap, width - 16],
  ] as const;
  const rows = pieces.map(([left], place) =>
    place === 0 ? fastenersFrom(left, 1, of, 2) : fastenersFrom(left, 1, of, 1),
  );
  const [first, second, last] = pieces;
  return [
    ...pieces.map(([left, right]) => bar(left, right, y)),
    ...rows.flat().flatMap((x) => fastener([x, y])),
    ...breakAt((second[0] + second[1]) / 2 + 10, y - half, y + half),
    ...spacings(of, first[0], rows[0]!, y - half, y - 36, 'first'),
    ...dimension(
      [
        [first[0], y - half],
        [first[1], y - half],
      ],
      'above',
      y - 68,
      of.text('piece'),
    ),
    ...(of.has('gap')
      ? dimension(
          [
            [first[1], y - half],
            [second[0], y - half],
          ],
          'above',
          y - 36,
          of.text('gap'),
        )
      : []),
    ...dimension(
      [
        [first[0], y + half],
        [last[1], y + half],
      ],
      'below',
      y + 38,
      of.text('run'),
    ),
  ];
}
