import type { Text } from '#engine/text.ts';
import { label, line } from './marks.ts';
import { widthOf, type Mark, type Point } from './sketch.ts';

const tick = 4;
const gap = 3;

/** Where the dimension line lies, seen from what is measured. */
export type Side = 'above' | 'below' | 'left' | 'right';

/** Beside which of its ends the text of a level line goes where it has no room between them. */
export type Beyond = 'first' | 'second';

/**
 * A dimension as on a drawing: from each end an extension line out to a line between ticks, and the
 * measure in it. `at` is the x or the y of that line, whichever it keeps.
 */
export function dimension(
  [a, b]: readonly [Point, Point],
  side: Side,
  at: number,
  text: Text,
  beyond: Beyond = 'second',
): readonly Mark[] {
  const isLevel = side === 'above' || side === 'below';
  const out = side === 'above' || side === 'left' ? -1 : 1;
  const on = ([x, y]: Point): Point => (isLevel ? [x, at] : [at, y]);
  const [first, second] = [on(a), on(b)];
  const move = ([x, y]: Point, by: number): Point => (isLevel ? [x, y + by] : [x + by, y]);
  const extension = (from: Point, to: Point): Mark =>
    line([move(from, gap * out), move(to, gap * out)], 'thin');
  const slash = ([x, y]: Point): Mark =>
    line(
      [
        [x - tick, y + tick],
        [x + tick, y - tick],
      ],
      'plain',
    );
  return [
    extension(a, first),
    extension(b, second),
    line([first, second], 'thin'),
    slash(first),
    slash(second),
    isLevel ? levelText(first, second, text, beyond) : uprightText(first, second, text, out),
  ];
}

const hasRoom = (long: number, text: Text): boolean => Math.abs(long) >= widthOf(text) + 10;

function levelText([from, y]: Point, [to]: Point, text: Text, beyond: Beyond): Mark {
  if (hasRoom(to - from, text)) return label([(from + to) / 2, y], text);
  const [end, other] = beyond === 'first' ? [from, to] : [to, from];
  return end < other ? label([end - 8, y], text, 'end') : label([end + 8, y], text, 'start');
}

/** Along the line where it has room, or else level and outside of it. */
function uprightText([x, from]: Point, [, to]: Point, text: Text, out: 1 | -1): Mark {
  const y = (from + to) / 2;
  if (hasRoom(to - from, text)) return label([x, y], text, 'middle', -90);
  return label([x + 8 * out, y], text, out < 0 ? 'end' : 'start');
}
