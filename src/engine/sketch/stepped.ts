/** The foot of a wall on a slope: the flashing goes down by whole courses. */
import { dimension } from './dimension.ts';
import { breakAt, line, shape } from './marks.ts';
import { named, type Measured } from './measured.ts';
import type { Mark, Point } from './sketch.ts';

const courseName = { en: 'course', es: 'hilada' };

const [left, right, high, low] = [74, 274, 74, 162];
const steps = 4;
const [step, drop] = [(right - left) / steps, (low - high) / steps];
/** The flashing begins so far above the ground. */
const off = 30;

/** Four steps stand for all, however many there are. */
const stairs = Array.from({ length: steps }, (_, place): readonly Point[] => [
  [left + place * step, high - off + place * drop],
  [left + (place + 1) * step, high - off + place * drop],
]).flat();

const slope: readonly Point[] = [
  [left - 12, high - (12 * drop) / step],
  [right + 12, low + (12 * drop) / step],
];

export function steppedElevation(of: Measured): readonly Mark[] {
  const ground = slope.toReversed().map(([x, y]): Point => [x, y + 16]);
  return [
    shape([...slope, ...ground], 'earth', 'none'),
    line(slope, 'plain'),
    line(stairs, 'heavy'),
    ...breakAt(left + step * 2.5, high - off + drop * 1.2, low + 4),
    ...dimension(
      [
        [left + step, high - off],
        [left + step, high - off + drop],
      ],
      'right',
      left + step + 24,
      named(courseName, of.text('course')),
    ),
    ...dimension(
      [
        [left, high],
        [right, low],
      ],
      'right',
      right + 34,
      of.text('fall'),
    ),
    ...dimension(
      [
        [left, low + 22],
        [right, low + 22],
      ],
      'below',
      low + 46,
      of.text('run'),
    ),
    ...(of.has('rise')
      ? dimension(
          [
            [left, high - off],
            [left, high],
          ],
          'left',
          left - 18,
          of.text('rise'),
        )
      : []),
  ];
}
