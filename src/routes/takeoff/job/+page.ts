import type { Catalogue } from '#engine/compile/catalogue.ts';
import { openTakeoff } from '#ui/content/open-content.ts';
import type { PageLoad } from './$types';

/** The take-offs that an address names, or the whole wall. */
function familiesOf(asked: URLSearchParams, { takeoffs }: Catalogue): readonly string[] {
  const wanted = new Set(asked.getAll('families').flatMap((list) => list.split(',')));
  const known = takeoffs.filter(({ id }) => wanted.has(id));
  const whole = takeoffs.filter(({ topic }) => topic === 'whole-wall');
  const shown = known.length > 0 ? known : whole.length > 0 ? whole : takeoffs.slice(0, 1);
  return shown.map(({ id }) => id);
}

export const load: PageLoad = async ({ fetch, parent, url }) => {
  const { revision, catalogue } = await parent();
  const families = familiesOf(url.searchParams, catalogue);
  const bundles = await Promise.all(families.map((id) => openTakeoff(fetch, revision, id)));
  return { families, bundles };
};
