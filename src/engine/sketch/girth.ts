/** The sheet cut across: up the backing, round the transition, out over the shelf. */
import type { Text } from '#engine/text.ts';
import { dimension } from './dimension.ts';
import { box, label, leader, line } from './marks.ts';
import { named, within, type Measured } from './measured.ts';
import type { Mark, Point } from './sketch.ts';

const thick = 40;

export function girthSection(of: Measured): readonly Mark[] {
  const shelf = 176;
  const up = within((150 * of.size('turn-up')) / of.size('shelf'), 96, 150);
  const out = within((up * of.size('shelf')) / of.size('turn-up'), 84, 120);
  const wall = 262;
  const edge = wall - out;
  const ends = { past: hasEnd(of, 'projection', true), back: hasEnd(of, 'setback', false) };
  const toe = edge + (ends.past ? -toeLength : ends.back ? toeLength : 0);
  const top = shelf - up;
  const floor = shelf + 34;
  return [
    box([wall, top - 26], [wall + thick, floor], 'masonry', 'plain'),
    box([edge, shelf], [wall, floor], 'concrete', 'plain'),
    ...sheet([wall, top], [wall, shelf], [toe, shelf], of.has('fold')),
    ...dimension(
      [
        [wall + thick, top],
        [wall + thick, shelf],
      ],
      'right',
      wall + thick + 26,
      of.text('turn-up'),
    ),
    ...dimension(
      [
        [edge, floor],
        [wall, floor],
      ],
      'below',
      floor + 24,
      of.text('shelf'),
    ),
    ...ending(of, ends, edge, shelf),
    ...(of.has('fold') ? fold(of, [wall, shelf]) : []),
  ];
}

/** Laid a little off what it covers, so that it can be told apart. */
function sheet([x, top]: Point, [, y]: Point, [toe]: Point, hasFold: boolean): readonly Mark[] {
  const [off, cut] = [4, hasFold ? 16 : 0];
  return [
    line(
      [
        [x - off, top],
        [x - off, y - off - cut],
        [x - off - cut, y - off],
        [toe, y - off],
      ],
      'heavy',
    ),
  ];
}

const pastName = { en: 'past', es: 'saliente' };
const setbackName = { en: 'back', es: 'adentro' };
const toeLength = 18;

const hasEnd = (of: Measured, measure: string, drip: boolean): boolean =>
  of.has(measure) && (of.holds('drip') ?? drip) === drip;

/** How far something ends before the outer edge of the shelf, or the toe past it. */
const ending = (
  of: Measured,
  ends: { readonly past: boolean; readonly back: boolean },
  edge: number,
  shelf: number,
): readonly Mark[] => {
  const stretch = (from: number, to: number, at: number, text: Text): readonly Mark[] =>
    dimension(
      [
        [from, shelf - 8],
        [to, shelf - 8],
      ],
      'above',
      shelf - at,
      text,
      'first',
    );
  return [
    ...(ends.back
      ? stretch(edge, edge + toeLength, 34, named(setbackName, of.text('setback')))
      : []),
    ...(ends.past
      ? stretch(edge - toeLength, edge, 60, named(pastName, of.text('projection')))
      : []),
  ];
};

const foldName = { en: 'fold', es: 'doblez' };

const fold = (of: Measured, [x, y]: Point): readonly Mark[] => [
  ...leader([x - 30, y - 92], [x - 12, y - 12]),
  label([x - 34, y - 94], named(foldName, of.text('fold')), 'end'),
];
