import { openMethod } from '#ui/content/open-content.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = async ({ fetch, params, parent }) => {
  const { revision } = await parent();
  return { bundle: await openMethod(fetch, revision, params.id) };
};
