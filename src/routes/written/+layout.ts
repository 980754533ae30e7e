import { openCatalogue } from '#ui/content/open-content.ts';
import type { LayoutLoad } from './$types';

export const load: LayoutLoad = async ({ fetch, parent }) => {
  const { revision } = await parent();
  return { catalogue: await openCatalogue(fetch, revision) };
};
