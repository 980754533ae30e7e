import type { Zone } from '#engine/method/drawing.ts';
import type { Applied } from './applied.ts';
import { type Laid, dimensionOf, shapeOf } from './laid.ts';
import { paint } from './paint.ts';
import { type Point, add, middleOf } from './point.ts';
import { type Range, toeOf, transitionReach } from './range.ts';
import {
  type Surface,
  bridge,
  drape,
  endsOf,
  offset,
  pointsOf,
  resample,
  splice,
  stretch,
} from './surface.ts';
import { releasePaper } from './release-paper.ts';
import { type Wall, isComplete, isOn, zonesOf } from './wall.ts';

/** Drawn thicker than life, as a heavy line. */
const thickness = 0.16;
const taut = 1.4;
const curlFrom = 2.4;

/**
 * The sheet in section: tight where it was pressed, across the transition where it was not, with air
 * under it where nobody rolled, and the rest of it loose where it is not yet laid.
 */
export function laySheet(wall: Wall, one: Applied, surface: Surface, [start, to]: Range): Laid {
  const { reach } = wall.scene;
  const goesOn = one.zone === 'toe' || one.zone === 'shelf' || one.zone === 'everywhere';
  const inner = goesOn ? Math.min(to, reach) : to;
  const from = spansTransition(wall, one) ? -transitionReach : start;
  let under = drape(stretch(surface, from, inner));
  if (isBridging(wall)) under = bridge(under, 0, taut);
  if (lifts(wall, one)) under = curled(under);
  if (hasAir(wall, one))
    under = offset(resample(under, 0.2), air(from, lifts(wall, one) ? inner - curlFrom : inner));
  const past: Surface =
    to > inner ? [{ at: add(under.at(-1)!.at, [to - inner, 0]), v: inner }] : [];
  const line = [...under, ...past];
  const over = offset(line, thickness, endsOf(wall.scene.face, from, inner));
  const body = [...pointsOf(line), ...pointsOf(over).toReversed()];
  const pulled = releasePaper(wall, one, under);
  return {
    shapes: [
      shapeOf(one, 'body', body, paint('thin', 'solid')),
      ...loose(wall, one, surface, to),
      ...pulled.shapes,
    ],
    surface: splice(surface, from, inner, over),
    dimensions: [...sheetDimensions(wall, one, over, [start, to]), ...pulled.dimensions],
    at: middleOf(pointsOf(over)),
  };
}

function sheetDimensions(wall: Wall, one: Applied, over: Surface, [from, to]: Range) {
  const { reach } = wall.scene;
  const end = over.at(-1)!.at;
  const first = over[0]!.at;
  return [
    ...dimensionOf(one, 'height', [first[0], 0], [first[0], -from], [-1, 0]),
    ...dimensionOf(one, 'setback', [to, end[1]], [reach, end[1]], [0, -1]),
    ...dimensionOf(one, 'projection', [reach, end[1]], [to, end[1]], [0, -1]),
    ...(one.zone === 'front-edge'
      ? dimensionOf(one, 'lap', [end[0], 0], [end[0], reach - to], [1, 0])
      : []),
  ];
}

/** Carried out over the shelf without ever having been pushed into the transition. */
const spansTransition = (wall: Wall, { zone }: Applied): boolean =>
  zone === 'shelf' &&
  zonesOf(wall, 'membrane').has('transition') &&
  isOn(wall, 'membrane', 'wall') &&
  !isOn(wall, 'membrane', 'transition');

/** Taut across the transition until every step that presses it in is done. */
const isBridging = (wall: Wall): boolean =>
  !isComplete(wall, 'membrane', ['transition']) || !isComplete(wall, 'rolled', ['transition']);

/** The toe stands off until it is pressed down. */
const lifts = (wall: Wall, { zone }: Applied): boolean =>
  (zone === 'toe' || (zone === 'shelf' && !goesFurther(wall))) &&
  !isComplete(wall, 'rolled', ['toe', 'shelf']);

const goesFurther = (wall: Wall): boolean => {
  const zones = zonesOf(wall, 'membrane');
  return zones.has('toe') || zones.has('front-edge');
};

function curled(under: Surface): Surface {
  const [first, end] = [under[0]!, under.at(-1)!];
  const from = Math.max(first.v, end.v - curlFrom);
  const lying = stretch(under, first.v, from);
  const { at, v } = lying.at(-1)!;
  const length = end.v - v;
  const curve = [1, 2, 3, 4, 5, 6].map((step): { at: Point; v: number } => {
    const part = step / 6;
    return {
      at: add(at, [length * part * (1 - 0.08 * part), 0.9 * part ** 2]),
      v: v + length * part,
    };
  });
  return [...lying, ...curve];
}

const hasAir = (wall: Wall, { zone, at }: Applied): boolean => {
  const zones = zone === 'wall' || zone === 'top-edge' ? (['wall', 'top-edge'] as const) : [zone];
  const wanted = zonesOf(wall, 'rolled');
  if (!zones.some((each) => wanted.has(each))) return false;
  return !wall.applied.some(
    (each) => each.layer === 'rolled' && zones.some((one) => one === each.zone) && each.at >= at,
  );
};

/** Pockets about 2 in long. */
const air =
  (from: number, to: number) =>
  (v: number): number => {
    const edge = Math.min(1, (v - from) / 0.6 - 0.4, (to - v) / 0.6 - 0.4);
    return 0.13 * Math.max(0, edge) * Math.max(0, Math.sin((v - from) * 2.6)) ** 2;
  };

/** The part of the sheet below what is laid, hanging until the next step. */
function loose(wall: Wall, one: Applied, surface: Surface, laid: number) {
  if (one.zone === 'shelf') return outerPart(wall, one, surface, laid);
  const below = (['transition', 'shelf'] as const).filter((zone) =>
    zonesOf(wall, 'membrane').has(zone),
  );
  const rest = below.filter((zone) => !isOn(wall, 'membrane', zone));
  const last = one.zone === 'wall' || one.zone === 'top-edge' || one.zone === 'transition';
  if (!last || rest.length === 0 || isLaidBelow(wall, one)) return [];
  const end = Math.min(toeOf(wall), wall.scene.reach);
  const way = bridge(drape(stretch(surface, laid, end)), 0, 2.4);
  const line = offset(resample(way, 0.25), (v) => 0.9 * Math.min(1, (v - laid) / 2.5) ** 1.5);
  const over = offset(line, thickness);
  const body: readonly Point[] = [...pointsOf(line), ...pointsOf(over).toReversed()];
  return [shapeOf(one, 'loose', body, paint('thin', 'tone'))];
}

/** The outer part of the sheet while it waits: its toe folded up, or past the front not yet turned down. */
function outerPart(wall: Wall, one: Applied, surface: Surface, laid: number) {
  const zones = zonesOf(wall, 'membrane');
  const waits = (zone: Zone): boolean => zones.has(zone) && !isOn(wall, 'membrane', zone);
  const rise = waits('toe') ? 0.22 : waits('front-edge') ? -0.14 : 0;
  if (rise === 0) return [];
  const length = rise > 0 ? Math.max(0.5, toeOf(wall) - laid) : 1.8;
  const { at } = stretch(surface, laid - 0.001, laid).at(-1)!;
  const line: Surface = [0, 1, 2, 3].map((part) => {
    const x = (length * part) / 3;
    return { at: add(at, [x, rise * x * x]), v: laid + x };
  });
  const over = offset(line, thickness);
  const body = [...pointsOf(line), ...pointsOf(over).toReversed()];
  return [shapeOf(one, 'loose', body, paint('thin', 'tone'))];
}

/** Whether another piece of the sheet is laid lower than this one. */
const isLaidBelow = (wall: Wall, { zone }: Applied): boolean => {
  const order = ['top-edge', 'wall', 'transition', 'shelf', 'toe'] as const;
  const below = order.slice(order.findIndex((each) => each === zone) + 1);
  return below.some((each) => isOn(wall, 'membrane', each));
};
