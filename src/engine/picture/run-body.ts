import type { Shape } from './drawing.ts';
import { paint } from './paint.ts';
import type { Point } from './point.ts';
import { outlineOf } from './patch.ts';
import { type Leg, type Plan, project, startOf } from './plan.ts';
import { type Scene, backingOf } from './scene.ts';
import type { Wall } from './wall.ts';

/** How far below the shelf a run is shown. */
export const belowOf = ({ assembly }: Scene): number => (assembly === 'window-sill' ? 6.6 : 2);

/** The bare wall: its cuts, its faces, and what is behind them. */
export function bodyOf(wall: Wall, plan: Plan): readonly Shape[] {
  const { scene } = wall;
  return plan.legs.flatMap((leg, index) => [
    ...(leg.cut ? endCut(scene, leg, index) : []),
    ...topCut(scene, leg, index),
    ...faces(wall, plan, index),
  ]);
}

const built = (
  id: string,
  part: string,
  points: readonly Point[],
  inked: Shape['paint'],
  closed = true,
): Shape => ({ id: `built.${id}`, part, zone: undefined, points, closed, paint: inked });

/** The section's solids once more, where the run is broken off. */
function endCut(scene: Scene, leg: Leg, index: number): readonly Shape[] {
  const below = belowOf(scene);
  return scene.built
    .filter(({ what, points }) => what !== 'earth' && points.some(([, y]) => y > -below))
    .map(({ what, points, closed, paint: inked }, i) =>
      built(
        `end.${index}.${i}`,
        what,
        points.map(([x, y]) => project(leg, leg.length, [x, Math.max(y, -below)])),
        inked,
        closed,
      ),
    );
}

/** What reaches the top is cut there too. */
function topCut(scene: Scene, leg: Leg, index: number): readonly Shape[] {
  return scene.built
    .filter(({ points, closed }) => closed && points.some(([, y]) => y === scene.top))
    .map(({ what, points, paint: inked }, i) => {
      const xs = points.map(([x]) => x);
      const [back, front] = [Math.min(...xs), Math.max(...xs)];
      const corner = (x: number, far: boolean): Point =>
        project(leg, far ? leg.length : startOf(leg, x), [x, scene.top]);
      const outline = [
        corner(back, false),
        corner(front, false),
        corner(front, true),
        corner(back, true),
      ];
      return built(`top.${index}.${i}`, what, outline, inked);
    });
}

function faces(wall: Wall, { legs }: Plan, index: number): readonly Shape[] {
  const { scene } = wall;
  const leg = legs[index]!;
  const whole = { leg: index, u0: 0, u1: leg.length };
  const wallFace = { ...whole, v0: scene.face[0]!.v, v1: 0 };
  const shelf = { ...whole, v0: 0, v1: scene.reach };
  const front = { ...whole, v0: scene.reach, v1: scene.reach + belowOf(scene) };
  const face = (name: string, part: string, patch: typeof wallFace): Shape =>
    built(`${name}.${index}`, part, outlineOf(legs, wall.face, patch), paint('thin', 'paper'));
  const parts = facePartsOf(wall);
  return [
    face('front', parts.front, front),
    face('shelf', parts.shelf, shelf),
    face('wall', parts.wall, wallFace),
    ...behindFace(wall, leg, index),
  ];
}

function facePartsOf({ scene, sequence }: Wall) {
  const backing = { 'concrete-masonry': 'block', concrete: 'concrete' } as const;
  const kind = backingOf(sequence.site);
  const wall = kind === 'concrete' || kind === 'concrete-masonry' ? backing[kind] : 'sheathing';
  switch (scene.assembly) {
    case 'wall-base':
      return { wall, shelf: 'foundation', front: 'foundation' };
    case 'shelf-angle':
      return { wall, shelf: 'angle', front: 'brick-below' };
    case 'window-sill':
      return { wall: 'sill', shelf: 'sill', front: wall };
  }
}

/** Studs show as hidden lines 16 in apart, courses of block as joints 8 in high. */
function behindFace({ scene, sequence }: Wall, leg: Leg, index: number): readonly Shape[] {
  if (scene.assembly === 'window-sill') return [];
  const backing = backingOf(sequence.site);
  const foot = scene.assembly === 'shelf-angle' ? 6 : 0;
  const line = (
    name: string,
    part: string,
    from: Point,
    to: Point,
    dash: 'solid' | 'hidden',
  ): Shape =>
    built(
      `${name}.${index}`,
      part,
      [project(leg, from[0], [0, from[1]]), project(leg, to[0], [0, to[1]])],
      paint('hair', 'none', dash),
      false,
    );
  if (backing === 'concrete-masonry') return blockJoints(scene, leg, foot, line);
  if (backing === 'concrete') return [];
  return Array.from({ length: Math.floor((leg.length - 2) / 16) + 1 }, (_, i) => 4 + i * 16)
    .filter((u) => u < leg.length - 2)
    .flatMap((u) =>
      [u, u + 1.625].map((at) =>
        line(
          `stud.${at}`,
          backing === 'steel-stud' ? 'stud' : 'wood-stud',
          [at, foot],
          [at, scene.top],
          'hidden',
        ),
      ),
    );
}

function blockJoints(
  { top }: Scene,
  { length }: Leg,
  foot: number,
  line: (name: string, part: string, from: Point, to: Point, dash: 'solid') => Shape,
): readonly Shape[] {
  const rows = Array.from({ length: Math.ceil((top - foot) / 8) }, (_, row) => foot + row * 8);
  return rows.flatMap((y, row) => {
    const columns = Math.ceil(length / 16);
    const heads = Array.from({ length: columns }, (_, i) => i * 16 + (row % 2 === 0 ? 8 : 16));
    return [
      ...(row > 0 ? [line(`bed.${row}`, 'block', [0, y], [length, y], 'solid')] : []),
      ...heads
        .filter((u) => u < length)
        .map((u) => line(`head.${row}.${u}`, 'block', [u, y], [u, Math.min(y + 8, top)], 'solid')),
    ];
  });
}
