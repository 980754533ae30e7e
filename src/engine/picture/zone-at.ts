import type { Zone } from '#engine/method/drawing.ts';
import type { View } from './drawing.ts';
import { nearestOn } from './nearest-on.ts';
import type { Point } from './point.ts';

/**
 * The zone that somebody points at: of those asked about, the one whose line in the view is nearest to
 * the point. Undefined where the view shows none of them. O(points of the lines).
 */
export function zoneAt({ paths }: View, point: Point, among: readonly Zone[]): Zone | undefined {
  let [best, least]: [Zone | undefined, number] = [undefined, Infinity];
  for (const zone of among) {
    const line = paths.get(zone);
    if (!line || line.length === 0) continue;
    const { distance } = nearestOn(line, point);
    if (distance < least) [best, least] = [zone, distance];
  }
  return best;
}
