import type { Text } from '#engine/text.ts';
import type { Hatch } from './hatches.ts';

/** On paper: x to the right, y down, in units of which a line of text takes 13. */
export type Point = readonly [x: number, y: number];

/** A drawing in plain geometry, for a screen or a printed page. Later marks cover earlier ones. */
export type Sketch = {
  readonly width: number;
  readonly height: number;
  readonly marks: readonly Mark[];
  /** What it is, for who cannot see it. */
  readonly title: Text;
};

export type Mark = Path | Circle | Lettering;

export type Path = {
  readonly kind: 'path';
  readonly points: readonly Point[];
  readonly closed: boolean;
  readonly weight: Weight;
  readonly fill: Fill;
  readonly dashed: boolean;
};

export type Circle = {
  readonly kind: 'circle';
  readonly centre: Point;
  readonly radius: number;
  readonly weight: Weight;
  readonly fill: Fill;
};

/** Text on a line half-way up it, which may run up the paper. */
export type Lettering = {
  readonly kind: 'lettering';
  readonly at: Point;
  readonly text: Text;
  /** Which part of the text stands at that point. */
  readonly anchor: 'start' | 'middle' | 'end';
  readonly turn: 0 | -90;
};

/** Lines of three weights, as on a drawing; `none` only fills. */
export type Weight = 'none' | 'thin' | 'plain' | 'heavy';

export const strokeWidths: Readonly<Record<Weight, number>> = {
  none: 0,
  thin: 0.7,
  plain: 1.3,
  heavy: 3.2,
};

export const lineHeight = 13;

const glyph = 7.2;

/** As wide as lettering may come out in either language: nothing measures it, so this is generous. */
export const widthOf = ({ en, es }: Text): number => Math.max(en.length, es.length) * glyph + 6;

export type Fill = 'none' | 'paper' | 'solid' | Hatch;
