import type { Layer } from '#engine/method/drawing.ts';
import type { Applied } from './applied.ts';
import type { Dimension, Keynote, Shape, View } from './drawing.ts';
import { type Laid, dimensionOf, nothing, shapeOf } from './laid.ts';
import { measureOf } from './measures.ts';
import { type Paint, paint } from './paint.ts';
import { type Point, middleOf, rectangle } from './point.ts';
import { seamSheet } from './run-extent.ts';
import { backingOf } from './scene.ts';
import { type Surface, drape, offset, pointsOf, resample, splice, stretch } from './surface.ts';
import { viewTitles } from './words.ts';
import { type Wall, isComplete, isOn, zonesOf } from './wall.ts';

const width = 16;
/** The lower sheet ends here, whatever the lap. */
const underEnd = 11;
const wallDepth = 1.4;
/** Drawn about six times as thick as life, to show what lies on what. */
const thick = { primer: 0.14, tape: 0.22, sheet: 0.26 } as const;

/** A cut across the lap of two sheets, seen from above; none where the wall has no seam. */
export function seamView(wall: Wall): View | undefined {
  if (!zonesOf(wall, 'membrane').has('seam')) return undefined;
  const over = underEnd - lapOf(wall);
  const face: Surface = [
    { at: [0, 0], v: 0 },
    { at: [width, 0], v: width },
  ];
  const laid = wall.applied.reduce<readonly Laid[]>(
    (all, one) => [...all, lay(wall, one, all.at(-1)?.surface ?? face, over)],
    [],
  );
  return {
    id: 'seam',
    title: viewTitles.seam,
    says: viewTitles.seam,
    bounds: { left: 0, right: width, bottom: -wallDepth, top: 2.4 },
    shapes: [...backing(wall), ...laid.flatMap(({ shapes }) => shapes)],
    keynotes: keynotesOf(wall, laid),
    dimensions: laid.flatMap(({ dimensions }): readonly Dimension[] => dimensions),
    paths: new Map([['seam', pointsOf(stretch(laid.at(-1)?.surface ?? face, over, underEnd))]]),
  };
}

const lapOf = (wall: Wall): number => {
  const sheet = seamSheet(wall);
  return sheet ? measureOf(wall, sheet, 'lap', 2) : 2;
};

function backing(wall: Wall): readonly Shape[] {
  const kind = backingOf(wall.sequence.site);
  const [part, fill] =
    wall.scene.assembly === 'window-sill'
      ? (['sill', 'wood'] as const)
      : kind === 'concrete-masonry'
        ? (['block', 'masonry'] as const)
        : kind === 'concrete'
          ? (['concrete', 'concrete'] as const)
          : (['sheathing', 'sheathing'] as const);
  return [
    {
      id: 'built.seam',
      part,
      zone: undefined,
      points: rectangle(0, -wallDepth, width, 0),
      closed: true,
      paint: paint('medium', fill),
    },
  ];
}

function keynotesOf(wall: Wall, laid: readonly Laid[]): readonly Keynote[] {
  const found = new Map<string, Keynote>();
  laid.forEach(({ at }, index) => {
    const { part } = wall.applied[index]!;
    if (at && !found.has(part)) found.set(part, { part, at });
  });
  return [...found.values()];
}

/** What shows in this cut: the lap's own layers, and those of the field below it. */
function lay(wall: Wall, one: Applied, surface: Surface, over: number): Laid {
  const sill = wall.scene.assembly === 'window-sill';
  const field = one.zone === 'everywhere' || one.zone === (sill ? 'shelf' : 'wall');
  if (one.zone === 'seam') return layInLap(wall, one, surface, over);
  if (!field) return nothing(surface);
  if (one.layer === 'primer') return coat(one, surface, 0, width, thick.primer, primed(one));
  if (one.layer !== 'membrane') return nothing(surface);
  return coat(one, surface, 0, underEnd, thick.sheet, paint('thin', 'solid'));
}

const primed = ({ placed }: Applied): Paint =>
  placed?.state === 'wet' ? paint('thin', 'primer-wet') : paint('hair', 'primer-dry');

function layInLap(wall: Wall, one: Applied, surface: Surface, over: number): Laid {
  switch (one.layer) {
    case 'primer':
      return coat(one, surface, over - 0.5, underEnd, thick.primer, primed(one));
    case 'tape':
      return tape(wall, one, surface, over);
    case 'membrane':
      return upperSheet(wall, one, surface, over);
    case 'mastic':
      return nothing(surface);
    default:
      return pass(one, surface, over);
  }
}

function coat(
  one: Applied,
  surface: Surface,
  from: number,
  to: number,
  by: number,
  inked: Paint,
): Laid {
  const under = drape(stretch(surface, from, to));
  const top = offset(under, by);
  return {
    ...nothing(splice(surface, from, to, top)),
    shapes: [shapeOf(one, 'body', [...pointsOf(under), ...pointsOf(top).toReversed()], inked)],
    at: middleOf(pointsOf(top)),
  };
}

/** With its release paper until that is pulled. */
function tape(wall: Wall, one: Applied, surface: Surface, over: number): Laid {
  const laid = coat(one, surface, over, underEnd, thick.tape, paint('medium', 'tape'));
  const pulls = zonesOf(wall, 'bare-tape').has('seam');
  const bare = pulls ? isOn(wall, 'bare-tape', 'seam') : isOn(wall, 'membrane', 'seam');
  if (bare) return laid;
  const paper = stretch(laid.surface, over, underEnd);
  const top = offset(paper, 0.08);
  const points = [...pointsOf(paper), ...pointsOf(top).toReversed()];
  return {
    ...laid,
    surface: splice(laid.surface, over, underEnd, top),
    shapes: [...laid.shapes, shapeOf(one, 'paper', points, paint('thin', 'release-paper'))],
  };
}

/** It stands off in a channel right through the lap until it is pressed and rolled. */
function upperSheet(wall: Wall, one: Applied, surface: Surface, over: number): Laid {
  const lying = drape(stretch(surface, over, width));
  const open = !isComplete(wall, 'pressed', ['seam']) || !isComplete(wall, 'rolled', ['seam']);
  const under = open ? offset(resample(lying, 0.25), mouth(over)) : lying;
  const top = offset(under, thick.sheet);
  const [a, b]: readonly Point[] = [over, underEnd].map((v): Point => [v, 0]);
  return {
    ...nothing(splice(surface, over, width, top)),
    shapes: [
      shapeOf(
        one,
        'body',
        [...pointsOf(under), ...pointsOf(top).toReversed()],
        paint('thin', 'solid'),
      ),
    ],
    dimensions: dimensionOf(one, 'lap', a!, b!, [0, -1]),
    at: stretch(top, width - 2.5, width).at(0)!.at,
  };
}

const mouth =
  (over: number) =>
  (v: number): number => {
    const beyond = Math.max(0, (v - underEnd) / 1.5);
    return v < over ? 0 : 0.32 * Math.max(0, 1 - beyond) ** 2;
  };

const passes: readonly Layer[] = ['rolled', 'pressed', 'bare-tape'];

function pass(one: Applied, surface: Surface, over: number): Laid {
  if (!passes.includes(one.layer) || one.layer === 'bare-tape') return nothing(surface);
  const line = pointsOf(offset(stretch(surface, over, underEnd), 0.2));
  const inked = paint('medium', 'none', one.layer === 'rolled' ? 'rolled' : 'solid');
  return {
    ...nothing(surface),
    shapes: [shapeOf(one, 'line', line, inked, false)],
    at: middleOf(line),
  };
}
