import { json } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { due } from '#server/assignments/due.ts';
import type { RequestHandler } from './$types';

/** What is due to whoever is signed in. */
export const GET: RequestHandler = async ({ locals }) => {
  const { db, act } = within(locals);
  return json(await due(db, act.by, act.at));
};
