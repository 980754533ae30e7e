import type { Zone } from '#engine/method/drawing.ts';
import type { Applied } from './applied.ts';
import type { Dimension, Shape } from './drawing.ts';
import { given, measureText } from './measures.ts';
import type { LayerMeasure } from '#engine/method/drawing.ts';
import type { Paint } from './paint.ts';
import type { Point } from './point.ts';
import type { Surface } from './surface.ts';

/** What one layer adds to a view, and the face that it leaves. */
export type Laid = {
  readonly shapes: readonly Shape[];
  /** What is seen behind the cut. */
  readonly beyond?: readonly Shape[];
  readonly surface: Surface;
  readonly dimensions: readonly Dimension[];
  /** The point that its number is led to. */
  readonly at: Point | undefined;
};

export const nothing = (surface: Surface): Laid => ({
  shapes: [],
  surface,
  dimensions: [],
  at: undefined,
});

export function shapeOf(
  one: Pick<Applied, 'part' | 'at'> & { readonly zone: Zone | undefined },
  name: string,
  points: readonly Point[],
  paint: Paint,
  closed = true,
): Shape {
  return {
    id: `${one.at}.${one.part}.${one.zone}.${name}`,
    part: one.part,
    zone: one.zone,
    points,
    closed,
    paint,
  };
}

/** The dimension of a measure that a setting of the layer gave; none where it gave none. */
export function dimensionOf(
  one: Applied,
  measure: LayerMeasure,
  from: Point,
  to: Point,
  away: Point | undefined,
): readonly Dimension[] {
  const set = given(one, measure);
  if (!set) return [];
  return [
    {
      id: `${one.at}.${one.part}.${one.zone}.${measure}`,
      part: one.part,
      setting: set.setting,
      measure,
      from,
      to,
      away,
      text: measureText(set.value),
    },
  ];
}
