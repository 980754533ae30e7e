import type { Language } from '#engine/text.ts';
import { type Box, overlap } from './box.ts';
import type { Dimension, View } from './drawing.ts';
import { type Point, add, between, distance, scale, subtract, unit } from './point.ts';

/** A dimension set on paper: y runs down, in pixels. */
export type PlacedDimension = {
  readonly id: string;
  readonly part: string;
  readonly text: string;
  /** Its ends carry ticks; none where the text is led to a point. */
  readonly line: readonly [Point, Point] | undefined;
  /** From the measured points out to the line, or from the point to the text. */
  readonly extensions: readonly (readonly [Point, Point])[];
  readonly label: Box;
};

export const textHeight = 13;
const glyph = 7.2;
const first = 16;
const tier = 19;
const most = 8;

/** As wide as the lettering may come out: the page checks nothing, so this is on the large side. */
export const textWidth = (text: string): number => text.length * glyph + 6;

/**
 * Sets each dimension on the first line out from what it measures where its text meets no other:
 * lines outside the view's own bounds in section, close to the work along the run. O(n² lines).
 */
export function placeDimensions(
  view: View,
  toPaper: (point: Point) => Point,
  frame: { readonly width: number; readonly left: number; readonly bottom: number },
  language: Language,
): readonly PlacedDimension[] {
  const shortFirst = view.dimensions
    .filter(({ away }) => away !== undefined)
    .toSorted((a, b) => distance(a.from, a.to) - distance(b.from, b.to));
  const placed: PlacedDimension[] = [];
  for (const dimension of shortFirst) {
    placed.push(onFreeLine(view, dimension, toPaper, frame, language, placed));
  }
  for (const note of view.dimensions.filter(({ away }) => away === undefined)) {
    placed.push(asNote(note, toPaper, frame.width, language, placed));
  }
  return placed;
}

type Frame = { readonly width: number; readonly left: number; readonly bottom: number };

function onFreeLine(
  view: View,
  dimension: Dimension,
  toPaper: (point: Point) => Point,
  frame: Frame,
  language: Language,
  placed: readonly PlacedDimension[],
): PlacedDimension {
  const away: Point = [dimension.away![0], -dimension.away![1]];
  const [from, to] = [toPaper(dimension.from), toPaper(dimension.to)];
  const clear = view.id === 'run' ? 0 : clearance(away, from, to, frame);
  const tries = Array.from({ length: most }, (_, i) => {
    const out = scale(away, clear + first + i * tier);
    return lineAt(dimension, from, to, out, view.id === 'run' ? undefined : away, language);
  });
  return tries.find((each) => isFree(each, placed)) ?? tries.at(-1)!;
}

/** From the measured points out past the frame of the wall. */
function clearance(away: Point, from: Point, to: Point, { left, bottom }: Frame): number {
  if (away[0] < 0) return Math.max(0, Math.max(from[0], to[0]) - left);
  if (away[1] > 0) return Math.max(0, bottom - Math.min(from[1], to[1]));
  return 0;
}

function lineAt(
  { id, part, text }: Dimension,
  from: Point,
  to: Point,
  out: Point,
  square: Point | undefined,
  language: Language,
): PlacedDimension {
  // In section both ends stand on one line though they are measured at different depths.
  const align = (point: Point, other: Point): Point => {
    if (!square) return add(point, out);
    const far = square[0] !== 0 ? Math.max(point[0], other[0]) : Math.min(point[1], other[1]);
    return square[0] !== 0 ? [far + out[0], point[1]] : [point[0], far + out[1]];
  };
  const [a, b] = [align(from, to), align(to, from)];
  const words = text[language];
  const width = textWidth(words);
  const length = distance(a, b);
  // A measure of nothing still has a direction: square to the way its line stands off.
  const along = length === 0 ? unit([-out[1], out[0]]) : unit(subtract(b, a));
  const turn = readable((Math.atan2(along[1], along[0]) * 180) / Math.PI);
  const centre = length >= width + 12 ? between(a, b) : add(b, scale(along, width / 2 + 7));
  const label = { centre, width, height: textHeight, turn };
  return {
    id,
    part,
    text: words,
    line: [a, b],
    extensions: [
      [from, add(a, scale(unit(out), 4))],
      [to, add(b, scale(unit(out), 4))],
    ],
    label,
  };
}

/** Never upside down; along a vertical line it reads from the right. */
const readable = (angle: number): number => {
  const turned = ((((angle + 90) % 180) + 180) % 180) - 90;
  return turned > 89.9 ? -90 : turned;
};

const isFree = (one: PlacedDimension, placed: readonly PlacedDimension[]): boolean =>
  placed.every((other) => !overlap(reachOf(one), reachOf(other)));

/** The text and its line together, so that no line runs through another's text. */
function reachOf({ line, label }: PlacedDimension): Box {
  if (!line) return label;
  const [a, b] = line;
  const angle = (label.turn * Math.PI) / 180;
  const axis: Point = [Math.cos(angle), Math.sin(angle)];
  const ends = [
    ...[a, b].map((end) => along(end, axis)),
    along(label.centre, axis) - label.width / 2,
    along(label.centre, axis) + label.width / 2,
  ];
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const shift = (low + high) / 2 - along(label.centre, axis);
  return { ...label, centre: add(label.centre, scale(axis, shift)), width: high - low };
}

const along = (point: Point, axis: Point): number => point[0] * axis[0] + point[1] * axis[1];

/** Text led to the point it speaks of. */
function asNote(
  { id, part, text, from }: Dimension,
  toPaper: (point: Point) => Point,
  width: number,
  language: Language,
  placed: readonly PlacedDimension[],
): PlacedDimension {
  const at = toPaper(from);
  const words = text[language];
  const wide = textWidth(words);
  const tries = [22, 34, 48, 64, 82].flatMap((far) =>
    [-30, 30, -70, 70, -110, 110, -150, 150].map((turn): PlacedDimension => {
      const angle = (turn * Math.PI) / 180;
      const end = add(at, scale([Math.cos(angle), Math.sin(angle)], far));
      const side = Math.cos(angle) < 0 ? -1 : 1;
      const label = {
        centre: add(end, [(side * wide) / 2, 0]),
        width: wide,
        height: textHeight,
        turn: 0,
      };
      return { id, part, text: words, line: undefined, extensions: [[at, end]], label };
    }),
  );
  const inside = ({ label }: PlacedDimension): boolean =>
    label.centre[0] - wide / 2 > 0 && label.centre[0] + wide / 2 < width && label.centre[1] > 8;
  return tries.find((each) => inside(each) && isFree(each, placed)) ?? tries[0]!;
}
