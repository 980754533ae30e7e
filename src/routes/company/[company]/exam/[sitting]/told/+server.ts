import { error, json } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { jsonBody, mostFor, refusal } from '#server/access/body.ts';
import { currentContent } from '#server/current-content.ts';
import { receive, toldList } from '#server/exams/told.ts';
import type { RequestHandler } from './$types';

/** Answers, and what else happened at the candidate's screen. */
export const POST: RequestHandler = async ({ locals, params, request, route }) => {
  const { desk, db, act } = within(locals);
  const body = await jsonBody(request, { most: mostFor(route.id) });
  if (!body.ok) return refusal(body.error);
  const list = toldList(body.value);
  if (!list.ok) return json({ code: list.error }, { status: 400 });
  const reception = { db, ledger: desk.ledger, content: await currentContent() };
  const received = await receive(reception, act, params.sitting, list.value);
  if (!received) error(404);
  return json(received);
};
