import { openMethod } from '#ui/content/open-content.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = async ({ data, fetch, parent }) => {
  const { revision } = await parent();
  const bundle =
    data.method === undefined ? undefined : await openMethod(fetch, revision, data.method);
  return { ...data, bundle };
};
