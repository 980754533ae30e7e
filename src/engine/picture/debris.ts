import type { Planned } from './applied.ts';
import type { Shape } from './drawing.ts';
import { paint } from './paint.ts';
import { pointAt } from './patch.ts';
import { type Plan, project } from './plan.ts';
import type { Point } from './point.ts';
import { type Range, meets, rangeOf } from './range.ts';
import { type Surface, offset, pointsOf, splice, stretch } from './surface.ts';
import { type Wall, plannedOn } from './wall.ts';

/** Where fins, screw tips and dust sit until somebody cleans the face, in inches of `v`. */
const spots = [-6.4, -4.3, -1.7, 1.6, 3.4] as const;
const half = 0.3;
const high = 0.3;

const groundwork = ['clean-face', 'strap', 'snap-line', 'drip-edge'];

/** The zones that this wall's steps clean, as long as they are dirty: cleaning what is covered is too late. */
function dirtyRanges(wall: Wall): readonly Range[] {
  const cleaning = plannedOn(wall, 'clean-face').filter(({ placed }) => placed === undefined);
  return cleaning.flatMap((planned) => {
    const range = rangeOf(wall, planned);
    return range && !isCleaned(wall, planned, range) ? [range] : [];
  });
}

function isCleaned(wall: Wall, { zone }: Planned, range: Range): boolean {
  const cleaned = wall.applied.find((each) => each.layer === 'clean-face' && each.zone === zone);
  const covered = wall.applied.find((each) => {
    const over = groundwork.includes(each.layer) ? undefined : rangeOf(wall, each);
    return over !== undefined && meets(over, range);
  });
  return cleaned !== undefined && (!covered || cleaned.at < covered.at);
}

/** The face that the section starts from, with what stands proud of it. */
export function roughFace(wall: Wall): {
  readonly surface: Surface;
  readonly shapes: readonly Shape[];
} {
  const { face, proud } = wall.scene;
  const dirty = dirtyRanges(wall);
  const fins = spots.filter((v) => dirty.some(([from, to]) => v - half > from && v + half < to));
  const built = proud.reduce(
    (surface, bump) => splice(surface, bump[0]!.v, bump.at(-1)!.v, bump),
    face,
  );
  return fins.reduce<{ surface: Surface; shapes: readonly Shape[] }>(
    ({ surface, shapes }, v) => {
      const under = stretch(surface, v - half, v + half);
      const tip = offset(stretch(surface, v, v + 0.001), high)[0]!;
      const over = [under[0]!, { at: tip.at, v }, under.at(-1)!];
      return {
        surface: splice(surface, v - half, v + half, over),
        shapes: [...shapes, debris(`section.${v}`, pointsOf(over))],
      };
    },
    { surface: built, shapes: [] },
  );
}

const debris = (id: string, points: readonly Point[]): Shape => ({
  id: `built.debris.${id}`,
  part: 'debris',
  zone: undefined,
  points,
  closed: true,
  paint: paint('thin', 'mortar'),
});

/** The same along the run, scattered always in the same way. */
export function debrisAlong(wall: Wall, { legs }: Plan): readonly Shape[] {
  const dirty = dirtyRanges(wall);
  return legs.flatMap((leg, index) =>
    spots.flatMap((v, row) => {
      if (!dirty.some(([from, to]) => v > from && v < to)) return [];
      return [0.18, 0.47, 0.83].map((part, i) => {
        const u = leg.length * part + ((row * 7 + i * 3) % 5) - 2;
        const at = (along: number, down: number): Point =>
          project(leg, u + along, pointAt(wall.face, v + down));
        return debris(`run.${index}.${v}.${i}`, [at(-0.5, 0.25), at(0.1, -0.3), at(0.6, 0.25)]);
      });
    }),
  );
}
