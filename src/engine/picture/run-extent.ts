import type { Layer, Zone } from '#engine/method/drawing.ts';
import type { Planned } from './applied.ts';
import { measureOf } from './measures.ts';
import type { Patch } from './patch.ts';
import type { Plan } from './plan.ts';
import { type Range, rangeOf, toeOf } from './range.ts';
import { type Wall, plannedOn, zonesOf } from './wall.ts';

/** Legs of a preformed corner, in inches: common practice. */
export const cornerLeg = 6;
const margin = 1.5;
/** How far a sill's corner piece goes down over the front. */
const turnDown = 2;
/** A plate that covers a splice of the shelf's steel. */
const splicePlate = 6;

/** Where the sheets of a run meet: the lower sheet ends at `under`, the upper begins at `over`. */
export type Seam = { readonly over: number; readonly under: number };

export function seamOf(wall: Wall, { legs }: Plan): Seam | undefined {
  const second = seamSheet(wall);
  if (!second) return undefined;
  const { length } = legs[0]!;
  const lap = measureOf(wall, second, 'lap', 2);
  const under = second.takes.has('setback')
    ? spliceAt(length) - measureOf(wall, second, 'setback', 6)
    : length * (legs.length > 1 ? 0.75 : 0.6);
  return { over: under - lap, under };
}

/** The second sheet, laid over the first; the last that was laid is the one that is seen. */
export const seamSheet = (wall: Wall): Planned | undefined =>
  plannedOn(wall, 'membrane').findLast(({ zone }) => zone === 'seam');

/** Where the shelf's steel is spliced, when laps keep a distance from it. */
export const spliceAt = (length: number): number => length * 0.8;

export function cornerLapOf(wall: Wall): number {
  const laps = (['tape', 'membrane', 'corner-piece'] as const).flatMap((layer) =>
    plannedOn(wall, layer).filter(
      ({ zone, takes }) =>
        takes.has('lap') && (zone === 'corner' || zone === 'second-side' || zone === 'shelf'),
    ),
  );
  const found = laps.at(-1);
  return found ? measureOf(wall, found, 'lap', 2) : 2;
}

/** Where the layer lies along the wall. */
export function patchesOf(wall: Wall, plan: Plan, one: Planned): readonly Patch[] {
  switch (one.zone) {
    case 'seam':
      return seamPatches(wall, plan, one);
    case 'corner':
      return cornerPatches(wall, plan, one);
    case 'second-side':
    case 'second-shelf':
      return secondPatches(wall, plan, one);
    case 'ends':
    case 'jambs':
    case 'sheet-back':
      return [];
    default: {
      const range = rangeOf(wall, one);
      if (range && one.layer === 'strap' && one.zone === 'shelf') {
        const at = spliceAt(plan.legs[0]!.length);
        return [{ leg: 0, u0: at - splicePlate / 2, u1: at + splicePlate / 2, ...down(range) }];
      }
      return range ? spans(wall, plan, one).map((span) => ({ ...span, ...down(range) })) : [];
    }
  }
}

const down = ([v0, v1]: Range) => ({ v0, v1 });

const whole = (wall: Wall): Range => [-wall.height, Math.min(toeOf(wall), wall.scene.reach)];

const wallZones: readonly Zone[] = ['wall', 'top-edge', 'everywhere'];

/** Along the whole run; but where the second side gets its own, along the first alone. */
function spans(wall: Wall, { legs, corner }: Plan, { layer, zone }: Planned) {
  const all = legs.map(({ length }, leg) => ({ leg, u0: 0, u1: length }));
  const named = zonesOf(wall, layer);
  const own = named.has('second-side') && (layer === 'membrane' || wallZones.includes(zone));
  const first = own ? all.slice(0, 1) : all;
  if (!isSheet(layer)) return first;
  const sill = wall.scene.assembly === 'window-sill';
  const seam = sill && zone !== 'shelf' ? undefined : seamOf(wall, { legs, corner });
  const start = layer === 'membrane' ? cornerLeg - cornerLapOf(wall) : 0;
  return first.map((span) => ({
    ...span,
    u0: zonesOf(wall, 'corner-piece').size > 0 ? start : 0,
    u1: seam && span.leg === 0 ? seam.under : span.u1,
  }));
}

const isSheet = (layer: Layer): boolean => layer === 'membrane' || layer === 'rolled';

function secondPatches(wall: Wall, { legs, corner }: Plan, one: Planned): readonly Patch[] {
  const split = zonesOf(wall, one.layer).has('second-shelf');
  const [top, toe] = whole(wall);
  const range: Range =
    one.zone === 'second-shelf'
      ? [-1, toe]
      : split || one.layer === 'rolled'
        ? [top, -1]
        : [top, toe];
  const leg = legs.length - 1;
  const piece = corner && zonesOf(wall, 'corner-piece').size > 0;
  const u0 = piece && one.layer === 'membrane' ? cornerLeg - cornerLapOf(wall) : 0;
  return [{ leg, u0, u1: legs[leg]!.length, ...down(range) }];
}

function seamPatches(wall: Wall, plan: Plan, one: Planned): readonly Patch[] {
  const seam = seamOf(wall, plan);
  if (!seam) return [];
  const { over, under } = seam;
  const [v0, v1] = whole(wall);
  switch (one.layer) {
    case 'membrane':
      return [{ leg: 0, u0: over, u1: plan.legs[0]!.length, v0, v1 }];
    case 'mastic': {
      const [a, b] = rangeOf(wall, { ...one, zone: 'toe' }) ?? [v1 - 1, v1];
      return [{ leg: 0, u0: over - margin, u1: under + margin, v0: a, v1: b }];
    }
    case 'primer':
      return [{ leg: 0, u0: over - 0.5, u1: under, v0, v1 }];
    default:
      return [{ leg: 0, u0: over, u1: under, v0, v1 }];
  }
}

/** At a corner of the wall on both sides of it; in a sill's corner on its floor. */
function cornerPatches(wall: Wall, { legs, corner }: Plan, one: Planned): readonly Patch[] {
  const sill = wall.scene.assembly === 'window-sill';
  if (!corner && !sill) return [];
  const [v0, toe] = whole(wall);
  const v1 = sill ? wall.scene.reach + turnDown : toe;
  const lap = cornerLapOf(wall);
  const strip = one.layer === 'tape' || one.layer === 'primer';
  const u0 = strip ? cornerLeg - Math.max(lap, one.layer === 'primer' ? lap + 0.5 : 0) : 0;
  return legs.map((_, leg) => ({ leg, u0, u1: cornerLeg, v0, v1 }));
}

/** Where fasteners or weeps stand along a leg. */
export function stationsOf(wall: Wall, plan: Plan, one: Planned, usual: number) {
  const spacing = Math.max(1, measureOf(wall, one, 'spacing', usual));
  const first = one.layer === 'fasteners' ? 0.5 + measureOf(wall, one, 'setback', 1) : 3;
  return plan.legs.flatMap(({ length, mitre }, leg) => {
    const from = first + (mitre === 0 ? 0 : 0.5);
    const count = Math.floor((length - 0.75 - from) / spacing) + 1;
    return Array.from({ length: Math.max(1, count) }, (_, i) => ({ leg, u: from + i * spacing }));
  });
}
