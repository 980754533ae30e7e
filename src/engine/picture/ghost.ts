import type { Planned } from './applied.ts';
import type { Shape } from './drawing.ts';
import { paint } from './paint.ts';
import { outlineOf } from './patch.ts';
import type { Plan } from './plan.ts';
import { rangeOf } from './range.ts';
import { patchesOf } from './run-extent.ts';
import { offset, pointsOf, stretch } from './surface.ts';
import { type Wall, plannedOn } from './wall.ts';

/** Where this wall's sheet will lie, as far as it does not lie there yet. */
const toCome = (wall: Wall): readonly Planned[] =>
  wall.work.ghost
    ? plannedOn(wall, 'membrane').filter(
        (planned) =>
          planned.placed === undefined &&
          !wall.applied.some(({ card, zone }) => card === planned.card && zone === planned.zone),
      )
    : [];

const ghost = (id: string, points: Shape['points'], closed: boolean): Shape => ({
  id: `ghost.${id}`,
  part: 'ghost',
  zone: undefined,
  points,
  closed,
  paint: paint('thin', 'none', 'ghost'),
});

export const ghostInSection = (wall: Wall): readonly Shape[] =>
  toCome(wall).flatMap((planned, index) => {
    const range = rangeOf(wall, planned);
    if (!range) return [];
    const line = offset(stretch(wall.face, range[0], range[1]), 0.3);
    return [ghost(`section.${index}`, pointsOf(line), false)];
  });

export const ghostAlong = (wall: Wall, plan: Plan): readonly Shape[] =>
  toCome(wall).flatMap((planned, index) =>
    patchesOf(wall, plan, planned).map((patch, i) =>
      ghost(`run.${index}.${i}`, outlineOf(plan.legs, wall.face, patch), true),
    ),
  );

/** Shapes of something that was left out, as it should have been. */
export const asMissing = (shapes: readonly Shape[]): readonly Shape[] =>
  shapes.map((shape) => ({ ...shape, paint: paint('medium', 'none', 'ghost') }));
