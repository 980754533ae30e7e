import { type Point, add, dot, left, scale, subtract, unit } from './point.ts';

/**
 * The face of the work as it stands, as the section cuts it: a line from the top of the wall down to
 * the transition and out along the shelf. `v` says where along the bare face a vertex lies: inches
 * above the transition count down to 0, inches out from it count up. It never falls along the line;
 * where two vertices share it, the edge of a layer stands between them.
 */
export type Vertex = { readonly at: Point; readonly v: number };
export type Surface = readonly Vertex[];

const near = 1e-9;

export const pointsOf = (line: Surface): readonly Point[] => line.map(({ at }) => at);

/** The part from one `v` to another, on top of what ends at the first and begins at the second. */
export function stretch(surface: Surface, from: number, to: number): Surface {
  const { first, last } = cut(surface, from, to);
  return [
    vertexAt(surface, first, from),
    ...surface.slice(first + 1, last),
    vertexAt(surface, last - 1, to, last),
  ];
}

/** The surface with that part replaced. */
export function splice(surface: Surface, from: number, to: number, part: Surface): Surface {
  const { first, last } = cut(surface, from, to);
  const start = vertexAt(surface, first, from);
  const end = vertexAt(surface, last - 1, to, last);
  return distinct([...surface.slice(0, first + 1), start, ...part, end, ...surface.slice(last)]);
}

/** The last vertex at or before `from`, and the first at or after `to`. */
function cut(surface: Surface, from: number, to: number) {
  const first = Math.max(
    0,
    surface.findLastIndex(({ v }) => v <= from + near),
  );
  const last = surface.findIndex(({ v }, index) => v >= to - near && index > first);
  return { first, last: last < 0 ? surface.length - 1 : last };
}

function vertexAt(surface: Surface, index: number, v: number, exact = index): Vertex {
  const here = surface[exact]!;
  if (Math.abs(here.v - v) <= near) return here;
  const a = surface[index]!;
  const b = surface[index + 1] ?? a;
  if (b.v - a.v <= near) return { at: a.at, v };
  const part = (v - a.v) / (b.v - a.v);
  return { at: add(a.at, scale(subtract(b.at, a.at), part)), v };
}

const isSame = (a: Vertex, b: Vertex | undefined): boolean =>
  b !== undefined &&
  Math.abs(b.at[0] - a.at[0]) <= near &&
  Math.abs(b.at[1] - a.at[1]) <= near &&
  Math.abs(b.v - a.v) <= near;

/** Without vertices that repeat the last, and without spikes of no width. */
const distinct = (line: Surface): Surface =>
  line.reduce<Vertex[]>((kept, vertex) => {
    if (isSame(vertex, kept.at(-1))) return kept;
    if (isSame(vertex, kept.at(-2))) kept.pop();
    else kept.push(vertex);
    return kept;
  }, []);

/** The normals that the face has just before and just after a part of it: its corners are mitred. */
export type Ends = { readonly before?: Point | undefined; readonly after?: Point | undefined };

const normalOf = (a: Vertex, b: Vertex): Point => left(unit(subtract(b.at, a.at)));

/** Where a part of the face begins or ends in a corner of it. */
export function endsOf(face: Surface, from: number, to: number): Ends {
  const start = face.findIndex(({ v }) => Math.abs(v - from) <= near);
  const end = face.findLastIndex(({ v }) => Math.abs(v - to) <= near);
  return {
    before: start > 0 ? normalOf(face[start - 1]!, face[start]!) : undefined,
    after: end >= 0 && end < face.length - 1 ? normalOf(face[end]!, face[end + 1]!) : undefined,
  };
}

/**
 * The line moved outward, its corners mitred. The distance may change along it. A corner too sharp
 * for a mitre is cut off.
 */
export function offset(
  line: Surface,
  distance: number | ((v: number) => number),
  ends: Ends = {},
): Surface {
  const far = typeof distance === 'number' ? () => distance : distance;
  const clean = distinct(line);
  const normals = clean.slice(1).map((vertex, i) => normalOf(clean[i]!, vertex));
  return clean.flatMap(({ at, v }, i) => {
    const a = normals[i - 1] ?? ends.before ?? normals[i] ?? [0, 0];
    const b = normals[i] ?? ends.after ?? a;
    const d = far(v);
    const spread = 1 + dot(a, b);
    if (spread < 0.3) return [a, b].map((n) => ({ at: add(at, scale(n, d)), v }));
    return [{ at: add(at, scale(add(a, b), d / spread)), v }];
  });
}

/** How far a sheet reaches before it lies down again beside the edge of a layer under it. */
const ramp = 0.35;

/** The line as a sheet follows it: edges of layers below become ramps. */
export function drape(line: Surface): Surface {
  return line.map((vertex, i) => {
    const [before, after] = [line[i - 1], line[i + 1]];
    if (!before || !after) return vertex;
    if (before.v === vertex.v && after.v > vertex.v) return low(before, vertex, after);
    if (after.v === vertex.v && before.v < vertex.v) return low(after, vertex, before);
    return vertex;
  });
}

/** The foot of an edge slides along the face below it; its head stays. */
function low(head: Vertex, foot: Vertex, along: Vertex): Vertex {
  const way = subtract(along.at, foot.at);
  const outward = along.v > foot.v ? left(way) : left(scale(way, -1));
  if (dot(subtract(head.at, foot.at), outward) <= 0) return foot;
  const part = Math.min(ramp / Math.hypot(way[0], way[1]), 0.5);
  return { at: add(foot.at, scale(way, part)), v: foot.v + (along.v - foot.v) * part };
}

/** The line with the stretch around `v` taken across, as a taut sheet does that was not pressed in. */
export function bridge(line: Surface, v: number, reach: number): Surface {
  const from = Math.max(v - reach, line[0]!.v);
  const to = Math.min(v + reach, line.at(-1)!.v);
  if (from >= v || to <= v) return line;
  const [a, b] = [stretch(line, line[0]!.v, from).at(-1)!, stretch(line, to, line.at(-1)!.v)[0]!];
  const corner = stretch(line, from, v).at(-1)!.at;
  const pull = add(scale(add(a.at, b.at), 0.36), scale(corner, 0.28));
  const curve = [1, 2, 3, 4, 5, 6, 7].map((step): Vertex => {
    const t = step / 8;
    const at = add(
      add(scale(a.at, (1 - t) ** 2), scale(pull, 2 * t * (1 - t))),
      scale(b.at, t ** 2),
    );
    return { at, v: a.v + (b.v - a.v) * t };
  });
  return [
    ...line.filter((vertex) => vertex.v < from - near),
    a,
    ...curve,
    b,
    ...line.filter((vertex) => vertex.v > to + near),
  ];
}

/** The line with vertices no further apart than `step`, for what changes along it. */
export function resample(line: Surface, step: number): Surface {
  return line.flatMap((vertex, i) => {
    const next = line[i + 1];
    if (!next) return [vertex];
    const pieces = Math.max(1, Math.ceil((next.v - vertex.v) / step - near));
    return Array.from({ length: pieces }, (_, piece) => ({
      at: add(vertex.at, scale(subtract(next.at, vertex.at), piece / pieces)),
      v: vertex.v + ((next.v - vertex.v) * piece) / pieces,
    }));
  });
}
