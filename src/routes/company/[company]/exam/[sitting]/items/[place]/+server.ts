import { error } from '@sveltejs/kit';
import { toText } from '#engine/compile/transport.ts';
import { within } from '#server/access/act.ts';
import { currentContent } from '#server/current-content.ts';
import { ownItem } from '#server/exams/own-sitting.ts';
import type { RequestHandler } from './$types';

/** One item, to whoever is sitting it. */
export const GET: RequestHandler = async ({ locals, params }) => {
  const { db, act } = within(locals);
  const asked = { id: params.sitting, place: Number(params.place) };
  const item = await ownItem(db, await currentContent(), act, asked);
  if (!item) error(404);
  return new Response(toText(item), { headers: { 'content-type': 'application/json' } });
};
