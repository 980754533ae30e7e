/** A roll laid open, and a taped sheet from the front. */
import { dimension } from './dimension.ts';
import { box, breakAt, dashed, label, line } from './marks.ts';
import { counted, named, within, width, type Measured } from './measured.ts';
import type { Mark } from './sketch.ts';

export function rollPlan(of: Measured): readonly Mark[] {
  const [left, right, top, across] = [64, width - 34, 40, 138];
  const bottom = top + across;
  const strip = within((across * of.size('strip')) / of.size('width'), 26, across * 0.44);
  const cuts = [1, 2].map((times) => top + times * strip).filter((y) => y < bottom - 8);
  return [
    box([left, top], [right, bottom], 'paper', 'plain'),
    ...cuts.map((y) =>
      dashed(
        [
          [left, y],
          [right, y],
        ],
        'plain',
      ),
    ),
    box([right - 6, top - 5], [right + 14, bottom + 5], 'paper', 'plain'),
    line(
      [
        [right + 4, top - 5],
        [right + 4, bottom + 5],
      ],
      'thin',
    ),
    ...breakAt((left + right) / 2, top, bottom),
    ...dimension(
      [
        [left, top],
        [left, bottom],
      ],
      'left',
      left - 38,
      of.text('width'),
    ),
    ...(cuts.length > 0
      ? dimension(
          [
            [left + 12, top],
            [left + 12, cuts[0]!],
          ],
          'right',
          left + 36,
          of.text('strip'),
        )
      : []),
    ...(of.has('length')
      ? dimension(
          [
            [left, bottom],
            [right, bottom],
          ],
          'below',
          bottom + 26,
          of.text('length'),
        )
      : []),
  ];
}

const seamNames = { en: 'seams', es: 'juntas' };
const cornerNames = { en: 'corners', es: 'esquinas' };
const tapeName = { en: 'tape', es: 'cinta' };

export function tapedSheetElevation(of: Measured): readonly Mark[] {
  const [left, right, top, down] = [26, width - 56, 58, 112];
  const bottom = top + down;
  const seam = (x: number): Mark => box([x - 5, top + 12], [x + 5, bottom], 'sealant', 'plain');
  const hasSeams = of.has('seams') && of.size('seams') > 0;
  const notes = [
    ...(of.has('seams') ? [counted(of.text('seams'), seamNames)] : []),
    ...(of.has('corners') ? [counted(of.text('corners'), cornerNames)] : []),
    ...(of.has('tape') ? [named(tapeName, of.text('tape'))] : []),
  ];
  return [
    box([left, top], [right, bottom], 'paper', 'plain'),
    box([left, top], [right, top + 12], 'sealant', 'plain'),
    ...(hasSeams ? [seam(left + 66), seam(right - 66)] : []),
    ...breakAt((left + right) / 2, top, bottom),
    ...dimension(
      [
        [left, top],
        [right, top],
      ],
      'above',
      top - 28,
      of.text('run'),
    ),
    ...dimension(
      [
        [right, top],
        [right, bottom],
      ],
      'right',
      right + 28,
      of.text('girth'),
    ),
    ...notes.map((note, place) => label([(left + right) / 2, bottom + 18 + place * 20], note)),
  ];
}
