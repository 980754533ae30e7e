import type { Method } from '#engine/method/method.ts';
import { allSites, holds, type Site } from '#engine/method/site.ts';
import type { Trouble } from '#engine/tally/where-it-goes-wrong.ts';

/** The wall that shows most of the steps that were judged, the more usual one first. */
export function wallToDraw({ site, steps }: Method, troubles: readonly Trouble[]): Site {
  const judged = new Set(troubles.flatMap(({ spot }) => (spot.kind === 'step' ? [spot.step] : [])));
  const shown = (wall: Site): number =>
    steps.filter((step) => judged.has(step.id) && holds(step.when, wall)).length;
  return allSites(site).reduce((best, wall) => (shown(wall) > shown(best) ? wall : best));
}
