import type { Applied } from './applied.ts';
import type { Dimension, Keynote, Shape, View } from './drawing.ts';
import type { Laid } from './laid.ts';
import { builtShapes, builtKeynotes } from './built.ts';
import { paint } from './paint.ts';
import type { Bounds, Point } from './point.ts';
import type { Scene, Solid } from './scene.ts';
import { roughFace } from './debris.ts';
import { asMissing, ghostInSection } from './ghost.ts';
import { pathsInSection } from './paths.ts';
import { layJamb } from './section-jambs.ts';
import { sectionLayers } from './section-layers.ts';
import type { Surface } from './surface.ts';
import { viewTitles } from './words.ts';
import type { Wall } from './wall.ts';

type Sum = {
  readonly surface: Surface;
  readonly beyond: readonly Shape[];
  readonly shapes: readonly Shape[];
  readonly dimensions: readonly Dimension[];
  readonly keynotes: readonly Keynote[];
};

/** The wall cut through, the work laid on it card by card. */
export function section(wall: Wall): View {
  const { scene } = wall;
  const rough = roughFace(wall);
  const bare: Sum = {
    surface: rough.surface,
    beyond: [],
    shapes: rough.shapes,
    dimensions: [],
    keynotes: [],
  };
  const done = wall.applied.reduce((sum, one) => more(sum, one, lay(wall, one, sum.surface)), bare);
  const missing = wall.missing.map((one) => {
    const { shapes, beyond = [], at } = lay(wall, one, done.surface);
    return { shapes: [...shapes, ...beyond], keynote: at && { part: one.part, at } };
  });
  return {
    id: 'section',
    title: viewTitles.section,
    says: viewTitles.section,
    bounds: boundsOf(wall),
    shapes: [
      ...done.beyond,
      ...builtShapes(inner(scene)),
      ...breakLine(scene),
      ...done.shapes,
      ...missing.flatMap(({ shapes }) => asMissing(shapes)),
      ...ghostInSection(wall),
      ...builtShapes(scene.later),
    ],
    keynotes: [
      ...rough.shapes.slice(0, 1).map(({ part, points }) => ({ part, at: points[1]! })),
      ...builtKeynotes([...inner(scene), ...scene.later]),
      ...done.keynotes,
      ...missing.flatMap(({ keynote }) => keynote ?? []),
    ],
    dimensions: done.dimensions,
    paths: pathsInSection(wall, done.surface),
  };
}

const lay = (wall: Wall, one: Applied, surface: Surface): Laid =>
  wall.scene.assembly === 'window-sill' && (one.zone === 'jambs' || one.zone === 'ends')
    ? layJamb(wall, one, surface)
    : sectionLayers[one.layer](wall, one, surface);

const more = (sum: Sum, one: Applied, laid: Laid): Sum => ({
  surface: laid.surface,
  beyond: [...sum.beyond, ...(laid.beyond ?? [])],
  shapes: [...sum.shapes, ...laid.shapes],
  dimensions: [...sum.dimensions, ...laid.dimensions],
  keynotes:
    laid.at && !sum.keynotes.some(({ part }) => part === one.part)
      ? [...sum.keynotes, { part: one.part, at: laid.at }]
      : sum.keynotes,
});

/** Where a deep wall is broken off behind its face. */
const breakAt = ({ built }: Scene): number =>
  Math.max(-3.4, Math.min(...built.flatMap(({ points }) => points.map(([x]) => x))));

function inner(scene: Scene): readonly Solid[] {
  const edge = breakAt(scene);
  return scene.built
    .filter(({ points }) => points.some(([x]) => x > edge + 0.01))
    .map((solid) => ({
      ...solid,
      points: solid.points.map(([x, y]): Point => [Math.max(x, edge), y]),
      mark: solid.mark && [Math.max(solid.mark[0], edge / 2 - 0.2), solid.mark[1]],
    }));
}

function breakLine(scene: Scene): readonly Shape[] {
  const x = breakAt(scene);
  const { top, bottom } = scene;
  const middle = (top + Math.max(0, bottom)) / 2;
  const points: readonly Point[] = [
    [x, bottom],
    [x, middle - 0.5],
    [x - 0.35, middle - 0.2],
    [x + 0.35, middle + 0.2],
    [x, middle + 0.5],
    [x, top],
  ];
  const shape = { part: scene.built[0]!.what, zone: undefined, points, closed: false };
  return x > -3.4 ? [] : [{ ...shape, id: 'built.break', paint: paint('thin') }];
}

const boundsOf = ({ scene }: Wall): Bounds => ({
  left: breakAt(scene),
  right: scene.reach + (scene.assembly === 'window-sill' ? 2.4 : 1.6),
  bottom: scene.bottom,
  top: scene.top,
});
