import { redirect } from '@sveltejs/kit';
import { openTakeoff } from '#ui/content/open-content.ts';
import { freshSeed } from '#ui/mockup/fresh-wall.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = async ({ fetch, params, parent, url }) => {
  const { revision } = await parent();
  const bundle = await openTakeoff(fetch, revision, params.family);
  // The numbers come from a seed: whoever comes without one gets one to share.
  if (!url.searchParams.has('seed')) {
    const asked = new URLSearchParams(url.searchParams);
    asked.set('seed', freshSeed());
    redirect(307, `${url.pathname}?${asked.toString()}`);
  }
  return { bundle };
};
