import { error } from '@sveltejs/kit';
import type { LayoutServerLoad } from './$types';

/** Asked anew on every way in, so that a page never shows more than its reader may see by now. */
export const load: LayoutServerLoad = ({ locals, url }) => {
  if (!locals.member) error(404);
  const { company, companyName, isDemo, name, roles } = locals.member;
  return { member: { company, companyName, isDemo, name, roles }, path: url.pathname };
};
