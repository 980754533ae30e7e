import type { Applied } from './applied.ts';
import { type Laid, dimensionOf, nothing, shapeOf } from './laid.ts';
import { measureOf } from './measures.ts';
import { type Fill, paint } from './paint.ts';
import type { Point } from './point.ts';
import { upstandOf } from './run-jamb.ts';
import { type Surface, stretch } from './surface.ts';
import type { Wall } from './wall.ts';

/** What goes up the jamb, seen beyond the cut through a sill. */
export function layJamb(wall: Wall, one: Applied, surface: Surface): Laid {
  const { reach, top } = wall.scene;
  const upstand = upstandOf(wall);
  const [back, front] = [0.02, reach - 0.02].map((v) => stretch(surface, v, v + 1e-6)[0]!.at);
  const panel = (from: number, to: number, fill: Fill, at: Point): Laid => {
    const foot =
      from === 0 ? [back!, front!] : [[back![0], from] as Point, [front![0], from] as Point];
    const points = [...foot, [front![0], to] as Point, [back![0], to] as Point];
    return {
      ...nothing(surface),
      beyond: [shapeOf(one, 'beyond', points, paint('thin', fill))],
      at,
    };
  };
  const wet = one.placed?.state === 'wet';
  switch (one.layer) {
    case 'end-dam': {
      const laid = panel(0, upstand, 'far', [front![0], upstand * 0.7]);
      const foot: Point = [front![0], 0];
      return {
        ...laid,
        dimensions: dimensionOf(one, 'height', foot, [foot[0], upstand], [1, 0]),
      };
    }
    case 'membrane': {
      const lap = measureOf(wall, one, 'lap', 2);
      const x = back![0];
      return {
        ...panel(upstand - lap, top, 'far', [front![0], top - 1]),
        dimensions: dimensionOf(one, 'lap', [x, upstand - lap], [x, upstand], [-1, 0]),
      };
    }
    case 'primer':
      return panel(0, top - 0.6, wet ? 'primer-wet' : 'primer-dry', [front![0], top - 2.5]);
    case 'tape':
      return panel(upstand - 2, upstand, 'release-paper', [front![0], upstand - 1]);
    case 'clean-face':
      return panel(0, top - 0.6, 'none', [front![0], top - 3.5]);
    default:
      return nothing(surface);
  }
}
