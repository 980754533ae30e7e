import { error, json } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { jsonBody, mostFor, refusal } from '#server/access/body.ts';
import { ownCheck, save, toTakeAlong } from '#server/checks/checks.ts';
import type { RequestHandler } from './$types';

/** One's own check with all that it needs where there is no signal. */
export const GET: RequestHandler = async ({ locals, params }) => {
  const { db, act } = within(locals);
  const found = await ownCheck(db, act, params.check);
  if (!found) error(404);
  return json(await toTakeAlong(db, found));
};

/** What was filled in since; answers with what stands there now. */
export const POST: RequestHandler = async ({ locals, params, request, route }) => {
  const { db, act } = within(locals);
  const body = await jsonBody(request, { most: mostFor(route.id) });
  if (!body.ok) return refusal(body.error);
  const sheet = (body.value as { readonly sheet?: unknown } | null)?.sheet;
  const saved = await save(db, act, { id: params.check, sheet });
  if (saved.ok) return json({ sheet: saved.value });
  const isAbsent = saved.error.some(({ code }) => code === 'ABSENT');
  return json({ faults: saved.error }, { status: isAbsent ? 404 : 400 });
};
