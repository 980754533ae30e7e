import { json } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { forForm } from '#server/people/crew-list.ts';
import type { RequestHandler } from './$types';

/** Crews of the name that somebody looks for in a form. */
export const GET: RequestHandler = async ({ locals, url }) => {
  const { db, act } = within(locals);
  return json(await forForm(db, act.by.company, url.searchParams));
};
