import { within } from '#server/access/act.ts';
import { currentContent } from '#server/current-content.ts';
import { points } from '#server/insight/points.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals }) => {
  const { db, act } = within(locals);
  const { company, person } = act.by;
  return { points: await points(db, await currentContent(), company, person) };
};
