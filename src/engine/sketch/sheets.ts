/** Sheets in a row along a straight wall, from above; the same for pieces of drip edge on a shelf. */
import { dimension } from './dimension.ts';
import { box, breakAt, disc, label, line } from './marks.ts';
import { counted, named, width, type Measured } from './measured.ts';
import type { Mark, Point } from './sketch.ts';

const lapName = { en: 'lap', es: 'traslape' };

/** Each piece lies over the end of the one before it. */
function lapped(of: Measured, each: string, y: number, weight: 'plain' | 'heavy'): readonly Mark[] {
  const overlap = of.has('lap') ? 26 : 0;
  const [left, right] = [16, width - 16];
  const first: readonly [number, number] = [left, 148];
  const second: readonly [number, number] = [148 - overlap, 148 - overlap + 132];
  const third: readonly [number, number] = [second[1] - overlap, right];
  const rise = of.has('lap') ? 6 : 0;
  const run = ([from, to]: readonly [number, number], place: number): Mark =>
    line(
      [
        [from, y - place * rise],
        [to, y - place * rise],
      ],
      weight,
    );
  const at = (x: number, level: number): Point => [x, level];
  return [
    ...[first, second, third].map(run),
    ...breakAt(212, y - 18, y + 4),
    ...dimension([at(first[0], y + 4), at(first[1], y + 4)], 'below', y + 26, of.text(each)),
    ...(of.has('lap')
      ? dimension(
          [at(second[0], y + 4), at(first[1], y + 4)],
          'below',
          y + 52,
          named(lapName, of.text('lap')),
        )
      : []),
    ...dimension([at(left, y + 4), at(right, y + 4)], 'below', y + 80, of.text('run')),
  ];
}

export const wallRunPlan = (of: Measured): readonly Mark[] => [
  box([10, 14], [width - 10, 42], 'masonry', 'plain'),
  ...breakAt(212, 14, 42),
  ...lapped(of, 'sheet', 62, 'heavy'),
  ...corners(of, 172),
];

/** Where each ends, what is still on its core. */
export const rollRunPlan = (of: Measured): readonly Mark[] => [
  ...[148, 280, width - 16].flatMap((x) => [
    disc([x - 9, 50], 12, 'paper'),
    disc([x - 9, 50], 4, 'paper'),
  ]),
  ...lapped(of, 'piece', 62, 'heavy'),
];

const cornerNames = {
  inside: { en: 'inside corners', es: 'esquinas interiores' },
  outside: { en: 'outside corners', es: 'esquinas exteriores' },
} as const;

/** A run with corners is drawn straight, as if it were unfolded; how many there are is written. */
const corners = (of: Measured, y: number): readonly Mark[] =>
  (['inside', 'outside'] as const)
    .filter((each) => of.has(each))
    .map((each, place) =>
      label([width / 2, y + place * 18], counted(of.text(each), cornerNames[each])),
    );

export const dripEdgePlan = (of: Measured): readonly Mark[] => [
  box([10, 14], [width - 10, 52], 'concrete', 'plain'),
  ...breakAt(212, 14, 52),
  line(
    [
      [10, 72],
      [width - 10, 72],
    ],
    'thin',
  ),
  ...lapped(of, 'piece', 68, 'plain'),
];
