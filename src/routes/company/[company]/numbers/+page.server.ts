import { within } from '#server/access/act.ts';
import { currentContent } from '#server/current-content.ts';
import { overview } from '#server/numbers/numbers.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals }) => {
  const { db, act } = within(locals);
  return { schemes: await overview(db, await currentContent(), act.by.company) };
};
