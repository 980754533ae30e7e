import type { Site } from '#engine/method/site.ts';

/** An address with every condition of a wall in it, so that it can be shared. */
export const siteAddress = (path: string, site: Site): string => {
  const answers = new URLSearchParams(site).toString();
  return answers === '' ? path : `${path}?${answers}`;
};
