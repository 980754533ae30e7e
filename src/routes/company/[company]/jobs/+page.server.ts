import { within } from '#server/access/act.ts';
import * as jobs from '#server/jobs/jobs.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals }) => {
  const { db, act } = within(locals);
  const today = act.at.slice(0, 10);
  return {
    ahead: await jobs.list(db, act.by.company, today, 'ahead'),
    past: await jobs.list(db, act.by.company, today, 'past'),
  };
};
