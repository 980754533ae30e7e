import type { Language } from '#engine/text.ts';
import type { Drawing, Shape, View, ViewId } from './drawing.ts';
import { type PlacedDimension, placeDimensions } from './place-dimensions.ts';
import { type PlacedKeynote, placeKeynotes } from './place-keynotes.ts';
import { type Point, between, distance } from './point.ts';

/** A view on paper of a width in pixels: y runs down, text keeps its size whatever the scale. */
export type Sheet = {
  readonly id: ViewId;
  readonly width: number;
  readonly height: number;
  /** Pixels to an inch of the wall. */
  readonly scale: number;
  readonly shapes: readonly SheetShape[];
  readonly dimensions: readonly PlacedDimension[];
  readonly keynotes: readonly PlacedKeynote[];
  readonly toPaper: (point: Point) => Point;
};

export type SheetShape = Omit<Shape, 'points' | 'closed'> & { readonly path: string };

type Margins = {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
};

/** Room for dimension lines; it does not change while the wall is built. */
const margins: Readonly<Record<ViewId, Margins>> = {
  section: { left: 66, right: 10, top: 10, bottom: 56 },
  run: { left: 26, right: 24, top: 30, bottom: 36 },
  seam: { left: 12, right: 12, top: 34, bottom: 40 },
  sheet: { left: 12, right: 12, top: 12, bottom: 12 },
};

/** The largest scale that is of use: a small view is not blown up. */
const largest: Readonly<Record<ViewId, number>> = { section: 28, run: 22, seam: 40, sheet: 14 };

export function layOut(drawing: Drawing, view: View, width: number, language: Language): Sheet {
  const { left, right, top, bottom } = margins[view.id];
  const { bounds } = view;
  const wide = bounds.right - bounds.left;
  const scale = Math.min(largest[view.id], Math.max(1, width - left - right) / wide);
  const aside = (width - left - right - wide * scale) / 2;
  const height = Math.round((bounds.top - bounds.bottom) * scale + top + bottom);
  const toPaper = ([x, y]: Point): Point => [
    left + aside + (x - bounds.left) * scale,
    top + (bounds.top - y) * scale,
  ];
  const frame = { width, left: left + aside, bottom: height - bottom };
  const dimensions = placeDimensions(view, toPaper, frame, language);
  const parts = new Map(drawing.parts.map((part) => [part.id, part]));
  return {
    id: view.id,
    width,
    height,
    scale,
    shapes: view.shapes.map(({ points, closed, ...rest }) => ({
      ...rest,
      path: pathOf(points.map(toPaper), closed),
    })),
    dimensions,
    keynotes: placeKeynotes(
      view.keynotes,
      parts,
      toPaper,
      { width, height },
      dimensions.map(({ label }) => label),
      busySpots(view).map(toPaper),
    ),
    toPaper,
  };
}

/** Where the layers lie close together. */
const busySpots = ({ id, paths }: View): readonly Point[] =>
  id === 'section' ? [...(paths.get('everywhere') ?? [])].flatMap(spread) : [];

const spread = (point: Point, index: number, line: readonly Point[]): readonly Point[] => {
  const next = line[index + 1];
  if (!next) return [point];
  const pieces = Math.max(1, Math.ceil(distance(point, next) * 2));
  return Array.from({ length: pieces }, (_, i) => between(point, next, i / pieces));
};

export const pathOf = (points: readonly Point[], closed: boolean): string =>
  points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${short(x)} ${short(y)}`).join('') +
  (closed ? 'Z' : '');

const short = (value: number): string => `${Math.round(value * 100) / 100}`;
