import type { Applied } from './applied.ts';
import { type Measures, measureOf } from './measures.ts';
import type { Scene } from './scene.ts';
import type { Surface } from './surface.ts';
import { damDepth } from './window-sill.ts';

/** How far a slope rises from the front edge to the back. */
export function riseOf(all: Measures, one: Applied, reach: number): number {
  const rate = measureOf(all, one, 'slope', 0.06);
  return reach * (rate > 1 ? Math.tan((rate * Math.PI) / 180) : rate);
}

/** The face that the run is drawn on: a sill with the slope and the dam that it has by now. */
export function faceOf(all: Measures, scene: Scene): Surface {
  if (scene.assembly !== 'window-sill') return scene.face;
  const slope = all.applied.findLast(({ layer }) => layer === 'slope');
  const dam = all.applied.findLast(({ layer }) => layer === 'back-dam');
  const rise = slope ? riseOf(all, slope, scene.reach) : 0;
  const high = dam ? measureOf(all, dam, 'height', 1) : 0;
  const [inside] = scene.face;
  return [
    { at: [-damDepth, rise + high], v: inside!.v },
    { at: [0, rise + high], v: -high - 1e-6 },
    { at: [0, rise], v: 0 },
    ...scene.face.filter(({ v }) => v > 0),
  ];
}
