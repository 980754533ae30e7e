import { error } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { currentContent } from '#server/current-content.ts';
import { crewInsight } from '#server/insight/crew-insight.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals, params, url }) => {
  const { db, act } = within(locals);
  const asked = { crew: params.crew, method: url.searchParams.get('method') ?? undefined };
  const insight = await crewInsight(db, await currentContent(), act.by.company, asked);
  if (!insight) error(404);
  return insight;
};
