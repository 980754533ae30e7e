import { version } from '$app/environment';
import { json } from '@sveltejs/kit';
import { currentContent } from '#server/current-content.ts';
import type { CurrentContent } from '#ui/content/content-address.ts';
import { contentParts } from '#ui/content/content-parts.ts';
import type { RequestHandler } from './$types';

/** Which revision is current, and all that is in it: asked anew each time, and kept by nobody. */
export const GET: RequestHandler = async () => {
  const content = await currentContent();
  const current: CurrentContent = {
    revision: content.revision,
    build: version,
    parts: contentParts(content),
  };
  return json(current, { headers: { 'cache-control': 'no-cache' } });
};
