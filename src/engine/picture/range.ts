import type { Layer } from '#engine/method/drawing.ts';
import type { Planned } from './applied.ts';
import { measureOf } from './measures.ts';
import { type Wall, plannedOn, zonesOf } from './wall.ts';

/** From one `v` of the face to another. */
export type Range = readonly [from: number, to: number];

/** How far from the transition, the toe and the top edge their own zones reach, in inches. */
export const transitionReach = 1;
const toeReach = 1.5;
const edgeReach = 2;

/** Layers that run along the wall in a strip instead of covering a zone, and their usual widths. */
const strips: Partial<Record<Layer, number>> = {
  strap: 4,
  'snap-line': 0,
  tape: 2,
  bar: 1,
  fasteners: 0.5,
  'lap-sealant': 0.9,
  mastic: 0.5,
  weeps: 0.5,
};

export const widthOf = (wall: Wall, one: Planned): number =>
  measureOf(wall, one, 'width', strips[one.layer] ?? 0);

/** Where the layer lies in section; none where the cut does not meet it. */
export const rangeOf = (wall: Wall, one: Planned): Range | undefined =>
  one.layer in strips ? stripOf(wall, one) : areaOf(wall, one);

function stripOf(wall: Wall, one: Planned): Range | undefined {
  const width = widthOf(wall, one);
  switch (one.zone) {
    case 'wall':
    case 'top-edge':
    case 'everywhere':
      return atTopEdge(wall, one.layer, width);
    case 'transition':
      return [-width / 2, width / 2];
    case 'shelf':
      if (one.layer === 'strap') return [0.6, 4.4];
      return inFromFace(wall, one, width);
    case 'toe':
      return inFromFace(wall, one, width);
    case 'front-edge': {
      const { assembly, reach } = wall.scene;
      return assembly === 'window-sill' ? [reach, reach + width] : inFromFace(wall, one, width);
    }
    default:
      return undefined;
  }
}

function atTopEdge({ height }: Wall, layer: Layer, width: number): Range {
  switch (layer) {
    case 'strap': // behind the bar, which is an inch wide, and as far past it below as above
      return [-height + 0.5 - width / 2, -height + 0.5 + width / 2];
    case 'fasteners':
      return [-height + 0.5 - width / 2, -height + 0.5 + width / 2];
    case 'lap-sealant':
      return [-height - 0.3, -height - 0.3 + width];
    default:
      return [-height, -height + width];
  }
}

function inFromFace(wall: Wall, one: Planned, width: number): Range {
  const back = one.layer === 'weeps' || one.layer === 'fasteners' ? 1 : 0.5;
  const edge = wall.scene.reach - measureOf(wall, one, 'setback', back);
  return [edge - width, edge];
}

/** Where the sheet ends: back from the veneer's face, or out past it. */
export function toeOf(wall: Wall): number {
  const { reach } = wall.scene;
  const sheet = plannedOn(wall, 'membrane');
  if (sheet.some(({ zone }) => zone === 'front-edge')) return reach;
  const set = sheet.findLast(({ takes }) => takes.has('setback') || takes.has('projection'));
  if (set?.takes.has('projection')) return reach + measureOf(wall, set, 'projection', 0);
  if (set && set.zone !== 'seam') return reach - measureOf(wall, set, 'setback', 0.5);
  return wall.scene.assembly === 'window-sill' ? reach : reach - 0.5;
}

/** A zone that the layer never has on this wall is taken over by its neighbours. */
function areaOf(wall: Wall, one: Planned): Range | undefined {
  const named = zonesOf(wall, one.layer);
  const { height } = wall;
  const { reach, top } = wall.scene;
  const toe = toeOf(wall);
  const bend = named.has('transition') ? transitionReach : 0;
  switch (one.zone) {
    case 'top-edge':
    case 'wall':
      if (one.layer === 'weather-barrier') {
        return [-top, -height + measureOf(wall, one, 'lap', 4)];
      }
      return one.zone === 'top-edge'
        ? [-height, -height + edgeReach]
        : [-height + (named.has('top-edge') ? edgeReach : 0), -bend];
    case 'transition':
      return [-transitionReach, transitionReach];
    case 'shelf':
      return [bend, named.has('toe') ? Math.min(toe, reach) - toeReach : toe];
    case 'toe':
      return [Math.min(toe, reach) - toeReach, toe];
    case 'front-edge':
      return [reach, reach + measureOf(wall, one, 'lap', 2)];
    case 'everywhere':
      return [-height, toe];
    default:
      return undefined;
  }
}

export const meets = (a: Range, b: Range): boolean => a[0] < b[1] && b[0] < a[1];
