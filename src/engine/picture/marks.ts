import type { Zone } from '#engine/method/drawing.ts';
import { cardOf, partOf } from './applied.ts';
import type { Keynote, Shape, View } from './drawing.ts';
import { paint } from './paint.ts';
import { type Point, add, middleOf } from './point.ts';
import type { Wall } from './wall.ts';

/** A card that draws nothing but spoils a joint is marked with a cross where that joint is. */
export type Mark = {
  readonly card: string;
  readonly part: string;
  readonly zones: readonly Zone[];
};

export function marksOf({ sequence, work }: Wall): readonly Mark[] {
  const cards = [...new Set(work.placed.map(({ card }) => card))];
  return cards.flatMap((card) => {
    const found = cardOf(sequence, card);
    if (!found || found.draws.length > 0) return [];
    const joints = sequence.joints.filter(({ spoiltBy }) => spoiltBy.some((id) => id === card));
    const zones = [...new Set(joints.map(({ zone }) => zone))];
    return zones.length > 0 ? [{ card, part: partOf(card, 'mark'), zones }] : [];
  });
}

const arm = 0.7;

/** The view with a cross for every mark that it has room for. */
export function withMarks(view: View, marks: readonly Mark[]): View {
  const found = marks.flatMap(({ part, zones }, index) =>
    zones.flatMap((zone) => {
      const path = view.paths.get(zone);
      return path ? [{ part, zone, at: add(middleOf(path), [0.15 * index, 0.5 * index]) }] : [];
    }),
  );
  return {
    ...view,
    shapes: [...view.shapes, ...found.flatMap(({ part, zone, at }) => cross(part, zone, at))],
    keynotes: [...view.keynotes, ...firsts(found)],
  };
}

const cross = (part: string, zone: Zone, at: Point): readonly Shape[] =>
  ([1, -1] as const).map((side) => ({
    id: `mark.${part}.${zone}.${side}`,
    part,
    zone,
    points: [add(at, [-arm, -arm * side]), add(at, [arm, arm * side])],
    closed: false,
    paint: paint('heavy'),
  }));

const firsts = (
  found: readonly { readonly part: string; readonly at: Point }[],
): readonly Keynote[] =>
  found
    .filter(({ part }, index) => found.findIndex((other) => other.part === part) === index)
    .map(({ part, at }) => ({ part, at }));
