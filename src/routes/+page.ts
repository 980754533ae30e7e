import { openCatalogue } from '#ui/content/open-content.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = async ({ fetch, parent }) => {
  const { revision } = await parent();
  return { catalogue: await openCatalogue(fetch, revision) };
};
