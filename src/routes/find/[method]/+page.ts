import { redirect } from '@sveltejs/kit';
import { openMethod } from '#ui/content/open-content.ts';
import { findAddress } from '#ui/find/find-address.ts';
import { isSeed } from '#ui/mockup/wall-address.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = async ({ fetch, params, parent, url }) => {
  const { revision } = await parent();
  const bundle = await openMethod(fetch, revision, params.method);
  // Whoever comes without a seed, or with one that is none, gets a wall to share.
  const seed = url.searchParams.get('seed') ?? '';
  if (!isSeed(seed)) redirect(307, findAddress(params.method));
  return { bundle, seed };
};
