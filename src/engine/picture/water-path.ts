/**
 * The way of water over a drawing: through the zones of the joints it passes, one after the other. Each
 * zone has its line in a view; each begins where it is nearest to the end of the one before. Linear in
 * the points.
 */
import type { Zone } from '#engine/method/drawing.ts';
import type { Drawing, View, ViewId } from './drawing.ts';
import { nearestOn } from './nearest-on.ts';
import {
  type Bounds,
  type Point,
  add,
  distance,
  left,
  middleOf,
  scale,
  subtract,
  unit,
} from './point.ts';

/** A way of water in one view, from the wet end to the dry one. */
export type WaterRun = {
  readonly view: ViewId;
  readonly line: readonly Point[];
  readonly stops: readonly Stop[];
};

/** Where the water passes a joint; `zone` counts in the list of zones, `along` from 0 to 1. */
export type Stop = { readonly zone: number; readonly at: Point; readonly along: number };

/** How far from the face water comes, and how deep behind it a leak is shown, in inches. */
const away = 1.2;
const deep = 1.3;

/**
 * In the first view that shows all the zones; else each part of the way in the first view that shows
 * it. A zone that no view shows is passed over.
 */
export function waterPath({ views }: Drawing, through: readonly Zone[]): readonly WaterRun[] {
  const showsAll = views.find(({ paths }) => through.every((zone) => paths.has(zone)));
  const viewFor = (zone: Zone): View | undefined =>
    showsAll ?? views.find(({ paths }) => paths.has(zone));
  const legs = through.map((zone, place) => ({ zone, place, view: viewFor(zone) }));
  return views.flatMap((view) => {
    const here = legs.filter((leg) => leg.view === view);
    return here.length > 0 ? [runThrough(view, here)] : [];
  });
}

/** Where water goes on a wall that holds: down its face and out over the toe. Undefined without a section. */
export function drainPath({ views }: Drawing): WaterRun | undefined {
  const view = views.find(({ id }) => id === 'section');
  const face = view?.paths.get('everywhere');
  if (!view || !face || face.length < 2) return undefined;
  const [top, toe] = [face[0]!, face.at(-1)!];
  const out: Point = [toe[0] + away, toe[1]];
  const line: readonly Point[] = [
    [top[0] + 0.2, view.bounds.top],
    ...face,
    out,
    add(out, [0, -away]),
  ];
  return { view: view.id, line: line.map((point) => inside(point, view.bounds)), stops: [] };
}

type Leg = { readonly zone: Zone; readonly place: number };

type Stretch = {
  readonly line: readonly Point[];
  readonly places: readonly number[];
  readonly isTurned: boolean;
};

function runThrough(view: View, legs: readonly Leg[]): WaterRun {
  const stretches = joinedEndToEnd(view, legs);
  const way = stretches.flatMap(({ line }) => line);
  const [first, last] = [stretches[0]!, stretches.at(-1)!];
  const isSection = view.id === 'section';
  const from = isSection ? [add(way[0]!, scale(outward(first.line, first.isTurned), away))] : [];
  // Read back to front, the face lies on the other side.
  const back = isSection ? outward(last.line.toReversed(), !last.isTurned) : undefined;
  const into = back ? [add(way.at(-1)!, scale(back, -deep))] : [];
  const line = [...from, ...way, ...into].map((point) => inside(point, view.bounds));
  const total = lengthOf(line);
  let passed = lengthOf(line.slice(0, from.length + 1));
  const stops = stretches.flatMap((stretch, index) => {
    const before = stretches[index - 1]?.line.at(-1);
    if (before) passed += distance(before, stretch.line[0]!);
    const length = lengthOf(stretch.line);
    const found = stretch.places.map((zone, nth): Stop => {
      const along = passed + (length * (nth + 0.5)) / stretch.places.length;
      return { zone, at: pointAlong(line, along), along: total > 0 ? along / total : 0 };
    });
    passed += length;
    return found;
  });
  return { view: view.id, line, stops };
}

/** Joints next to each other in one zone share its line. As drawn, a line runs down and outward. */
function joinedEndToEnd({ paths }: View, legs: readonly Leg[]): readonly Stretch[] {
  const groups: { readonly zone: Zone; readonly places: number[] }[] = [];
  for (const { zone, place } of legs) {
    const open = groups.at(-1);
    if (open?.zone === zone) open.places.push(place);
    else groups.push({ zone, places: [place] });
  }
  const lines = groups.map(({ zone }) => paths.get(zone)!);
  const stretches: Stretch[] = [];
  groups.forEach(({ places }, index) => {
    const next = lines[index + 1];
    const way = partOf(lines[index]!, stretches.at(-1)?.line.at(-1), next && middleOf(next));
    stretches.push({ places, ...way });
  });
  return stretches;
}

/** Shorter than this a part of a line is no way: layers that lie under it are as thick. */
const slack = 0.25;

/** The line from where it is nearest to one point to where it is nearest to another; else from or to its end. */
function partOf(
  line: readonly Point[],
  from: Point | undefined,
  to: Point | undefined,
): Pick<Stretch, 'line' | 'isTurned'> {
  const all = lengthOf(line);
  const end = to ? nearestOn(line, to).along : all;
  const start = from ? nearestOn(line, from).along : 0;
  if (Math.abs(end - start) > slack) return between(line, start, end);
  const farther = all - start > slack ? all : 0;
  return from ? between(line, start, farther) : between(line, farther, end);
}

function between(line: readonly Point[], from: number, to: number) {
  const [low, high] = [Math.min(from, to), Math.max(from, to)];
  let passed = 0;
  const inner = line.filter((point, index) => {
    if (index > 0) passed += distance(line[index - 1]!, point);
    return passed > low && passed < high;
  });
  const part = [pointAlong(line, low), ...inner, pointAlong(line, high)];
  return { line: from > to ? part.toReversed() : part, isTurned: from > to };
}

/** The direction off the face where a line begins: as drawn, the wall lies on its right. */
function outward(line: readonly Point[], isTurned: boolean): Point {
  const start = line[0]!;
  const next = line.find((point) => distance(point, start) > 1e-6) ?? start;
  return scale(left(unit(subtract(next, start))), isTurned ? -1 : 1);
}

const inside = ([x, y]: Point, bounds: Bounds): Point => [
  Math.min(bounds.right, Math.max(bounds.left, x)),
  Math.min(bounds.top, Math.max(bounds.bottom, y)),
];

const lengthOf = (line: readonly Point[]): number =>
  line.slice(1).reduce((sum, point, index) => sum + distance(line[index]!, point), 0);

function pointAlong(line: readonly Point[], length: number): Point {
  let rest = length;
  for (const [index, from] of line.slice(0, -1).entries()) {
    const to = line[index + 1]!;
    const step = distance(from, to);
    if (rest <= step && step > 0) return add(from, scale(subtract(to, from), rest / step));
    rest -= step;
  }
  return line.at(-1)!;
}
