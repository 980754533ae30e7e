import { describe, expect, it } from 'vitest';
import { review } from '#engine/marking/review.ts';
import type { Zone } from '#engine/method/drawing.ts';
import type { Drawing, View, ViewId } from '#engine/picture/drawing.ts';
import { drawWall } from '#engine/picture/draw-wall.ts';
import type { Point } from '#engine/picture/point.ts';
import { drainPath, waterPath } from '#engine/picture/water-path.ts';
import { noWork } from '#engine/picture/work.ts';
import { zoneAt } from '#engine/picture/zone-at.ts';
import { walls } from '../../content/walls.ts';

const bounds = { left: -4, right: 10, bottom: -4, top: 12 };

const view = (id: ViewId, paths: Partial<Record<Zone, readonly Point[]>>): View =>
  ({ id, bounds, paths: new Map(Object.entries(paths)) }) as unknown as View;

const drawing = (...views: readonly View[]): Drawing => ({ views }) as unknown as Drawing;

/** An L: down a face to a corner, then out over a ledge. */
const section = view('section', {
  wall: [
    [0, 8],
    [0, 1],
  ],
  transition: [
    [0, 1],
    [0, 0],
    [1, 0],
  ],
  shelf: [
    [1, 0],
    [4, 0],
  ],
  everywhere: [
    [0, 8],
    [0, 0],
    [4, 0],
  ],
});
const run = view('run', {
  wall: [
    [5, 8],
    [5, 0],
  ],
  seam: [
    [2, 8],
    [2, 0],
  ],
});

describe('truth', () => {
  it('water comes from outside, runs down, and ends behind the face', () => {
    const [way] = waterPath(drawing(section), ['wall']);
    expect(way?.view).toBe('section');
    expect(way?.line[0]?.[0]).toBeGreaterThan(0);
    expect(way?.line[1]).toEqual([0, 8]);
    expect(way?.line.at(-2)).toEqual([0, 1]);
    expect(way?.line.at(-1)?.[0]).toBeLessThan(0);
  });

  it('over a ledge it ends below it', () => {
    const [way] = waterPath(drawing(section), ['shelf']);
    expect(way?.line.at(-1)?.[0]).toBe(4);
    expect(way?.line.at(-1)?.[1]).toBeLessThan(0);
  });

  it('joints in one zone share its line in equal parts', () => {
    const [way] = waterPath(drawing(section), ['wall', 'wall']);
    expect(way?.stops.map(({ zone, at }) => [zone, ...at])).toEqual([
      [0, 0, 6.25],
      [1, 0, 2.75],
    ]);
  });

  it('a zone goes on where the one before it ended', () => {
    const [way] = waterPath(drawing(section), ['wall', 'transition', 'shelf']);
    const [, ...rest] = way!.line;
    const steps = rest.slice(0, -1).map(([x, y], i) => [x - (rest[i - 1]?.[0] ?? 0), y]);
    expect(steps.every(([dx]) => dx! >= 0)).toBe(true);
    expect(rest.at(-2)).toEqual([4, 0]);
  });

  it('what no single view shows is shown in parts', () => {
    const ways = waterPath(drawing(section, run), ['seam', 'transition']);
    expect(ways.map(({ view: id, stops }) => [id, stops.map(({ zone }) => zone)])).toEqual([
      ['section', [1]],
      ['run', [0]],
    ]);
  });

  it('the first view that shows the whole way shows it alone', () => {
    expect(waterPath(drawing(section, run), ['seam', 'wall']).map((way) => way.view)).toEqual([
      'run',
    ]);
  });

  it('on a wall that holds, water stays in front of the face and falls beyond the toe', () => {
    const drain = drainPath(drawing(section))!;
    expect(drain.line.every(([x]) => x >= 0)).toBe(true);
    expect(drain.line.at(-1)![0]).toBeGreaterThan(4);
    expect(drain.line.at(-1)![1]).toBeLessThan(0);
    expect(drainPath(drawing(run))).toBeUndefined();
  });

  it('a point names the zone whose line is nearest, among those asked about', () => {
    expect(zoneAt(section, [1, 5], ['wall', 'shelf'])).toBe('wall');
    expect(zoneAt(section, [3, 1], ['wall', 'shelf'])).toBe('shelf');
    expect(zoneAt(section, [3, 1], ['wall'])).toBe('wall');
    expect(zoneAt(section, [3, 1], ['seam'])).toBeUndefined();
  });
});

describe('laws, on every wall', () => {
  it.each(walls)('every leak passes its joints in order, within its view: $name', (wall) => {
    const bare = drawWall(wall.sequence, noWork);
    const { leaks } = review({ sequence: wall.sequence, played: [] }).water;
    expect(leaks.length).toBeGreaterThan(0);
    for (const { path } of leaks) {
      const ways = waterPath(
        bare,
        path.map(({ joint }) => joint.zone),
      );
      const passed = ways.flatMap(({ stops }) => stops.map(({ zone }) => zone));
      expect(passed).toEqual([...path.keys()]);
      for (const { view: id, line, stops } of ways) {
        const { left, right, top, bottom } = bare.views.find((one) => one.id === id)!.bounds;
        expect(line.every(([x, y]) => x >= left && x <= right && y >= bottom && y <= top)).toBe(
          true,
        );
        const along = stops.map((stop) => stop.along);
        expect(along).toEqual(along.toSorted((a, b) => a - b));
        expect(along.every((part) => part >= 0 && part <= 1)).toBe(true);
      }
    }
    expect(drainPath(bare)?.line.length).toBeGreaterThan(3);
  });
});
