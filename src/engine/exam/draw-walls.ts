import { allSites, holds, siteFrom, type Site } from '#engine/method/site.ts';
import type { Method } from '#engine/method/method.ts';
import { randomFrom, shuffle } from '#engine/random.ts';
import type { MockUpPart, Scheme } from './scheme.ts';

/** The walls of a part by seed, each another one, in the order in which they are built. */
export function drawWalls(
  scheme: Scheme,
  part: MockUpPart,
  method: Method,
  seed: number | string,
): readonly Site[] {
  const covered = scheme.covers.get(method.id) ?? new Map();
  const walls =
    part.sites === 'random'
      ? allSites(method.site).filter((site) => holds(covered, site))
      : part.sites.flatMap((answers) => {
          const site = siteFrom(method.site, answers);
          return site.ok ? [site.value] : [];
        });
  const different = new Map(walls.map((site) => [JSON.stringify(site), site])).values();
  return shuffle(randomFrom(`${seed}/walls`), [...different]).slice(0, part.builds);
}
