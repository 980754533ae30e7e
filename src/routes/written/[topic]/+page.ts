import { openMethod, openWritten } from '#ui/content/open-content.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = async ({ fetch, params, parent }) => {
  const { revision } = await parent();
  const bundle = await openWritten(fetch, revision, params.topic);
  const shown = await Promise.all(bundle.drawnOn.map((id) => openMethod(fetch, revision, id)));
  return { bundle, shown };
};
