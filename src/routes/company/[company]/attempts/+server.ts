import { json } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { jsonBody, mostFor, refusal } from '#server/access/body.ts';
import { receive } from '#server/attempts/receive.ts';
import { sentList } from '#server/attempts/sent.ts';
import { currentContent } from '#server/current-content.ts';
import type { RequestHandler } from './$types';

/** Attempts of whoever is signed in, made here or elsewhere, now or days ago. */
export const POST: RequestHandler = async ({ locals, request, route }) => {
  const { desk, db, act } = within(locals);
  const body = await jsonBody(request, { most: mostFor(route.id) });
  if (!body.ok) return refusal(body.error);
  const list = sentList(body.value);
  if (!list.ok) return json({ fault: list.error }, { status: 400 });
  const content = await currentContent();
  const receipts = await receive({ db, inbox: desk.inbox, content }, act, list.value);
  return json({ receipts });
};
