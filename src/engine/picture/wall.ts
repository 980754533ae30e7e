import { type Layer, type Zone, layers } from '#engine/method/drawing.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import { type Applied, type Planned, appliedBy, missingFrom } from './applied.ts';
import { faceOf } from './face.ts';
import { type Measures, farthest, turnUp } from './measures.ts';
import { type Scene, type Corner, cornerOf } from './scene.ts';
import { shelfAngle } from './shelf-angle.ts';
import { stacked } from './stacking.ts';
import { wallBase } from './wall-base.ts';
import { windowSill } from './window-sill.ts';
import type { Surface } from './surface.ts';
import type { Work } from './work.ts';

/** Everything that the views are drawn from. */
export type Wall = Measures & {
  readonly sequence: Sequence;
  readonly work: Work;
  readonly scene: Scene;
  /** What the run is drawn on. */
  readonly face: Surface;
  readonly corner: Corner | undefined;
  /** In the order in which they lie on the wall. */
  readonly applied: readonly Applied[];
  /** By layer: what the steps of this wall put on, then what the cards did. */
  readonly planned: ReadonlyMap<Layer, readonly Planned[]>;
  /** What faults say was left out. */
  readonly missing: readonly Applied[];
  /** Of the turn-up's top edge above the transition. */
  readonly height: number;
};

const scenes = {
  'wall-base': wallBase,
  'shelf-angle': shelfAngle,
  'window-sill': windowSill,
} as const;

/** Wall left visible above the highest edge that can be set. */
const above = 2;

export function wallOf(sequence: Sequence, work: Work): Wall {
  const applied = stacked(appliedBy(sequence, work));
  const measures = { sequence, applied };
  const sill = sequence.method.assembly === 'window-sill';
  const height = turnUp(measures, sill ? 1 : 8);
  const highest = Math.max(farthest(sequence, 'height', 'snap-line'), sill ? 0 : 10, height);
  const scene = scenes[sequence.method.assembly](sequence.site, sill ? 9 : highest + above);
  return {
    sequence,
    work,
    scene,
    face: faceOf(measures, scene),
    corner: cornerOf(sequence.site),
    applied,
    planned: planOf(sequence, applied),
    missing: missingFrom(sequence, work),
    height,
  };
}

/** The steps of this wall that put the layer on, then the cards that did. */
export const plannedOn = ({ planned }: Wall, layer: Layer): readonly Planned[] =>
  planned.get(layer) ?? [];

function planOf({ steps }: Sequence, applied: readonly Applied[]): Wall['planned'] {
  const all: readonly Planned[] = [
    ...steps.flatMap(({ id, draws }) => draws.map((each) => ({ ...each, card: id }))),
    ...applied,
  ];
  return new Map(layers.map((layer) => [layer, all.filter((each) => each.layer === layer)]));
}

/** The zones on which this wall has the layer, sooner or later. */
export const zonesOf = (wall: Wall, layer: Layer): ReadonlySet<Zone> =>
  new Set(plannedOn(wall, layer).map(({ zone }) => zone));

export const isOn = ({ applied }: Wall, layer: Layer, zone: Zone): boolean =>
  applied.some((each) => each.layer === layer && each.zone === zone);

/** Whether every step that puts the layer on one of the zones has done so. */
export const isComplete = ({ sequence, applied }: Wall, layer: Layer, zones: readonly Zone[]) =>
  sequence.steps.every(({ id, draws }) =>
    draws.every(
      (each) =>
        each.layer !== layer ||
        !zones.includes(each.zone) ||
        applied.some(({ card, zone }) => card === id && zone === each.zone),
    ),
  );
