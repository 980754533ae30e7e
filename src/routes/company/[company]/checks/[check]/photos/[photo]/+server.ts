import { error, json } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { mostFor, refusal, wholeBody } from '#server/access/body.ts';
import { may } from '#server/access/rights.ts';
import { keepPhoto, photo } from '#server/checks/photos.ts';
import type { RequestHandler } from './$types';

/** For its examiner, for whom it shows, and for who may see applications; it never changes. */
export const GET: RequestHandler = async ({ locals, params }) => {
  const { db, act } = within(locals);
  const { company, person, roles } = act.by;
  const found = await photo(db, company, params.check, params.photo);
  const isTheirs = found && (found.candidate === person || found.examiner === person);
  if (!found || !(isTheirs || may(roles, 'see applications'))) error(404);
  return new Response(new Uint8Array(found.bytes), {
    headers: {
      'content-type': found.type,
      'content-disposition': 'inline',
      'content-security-policy': "default-src 'none'; sandbox",
    },
  });
};

export const POST: RequestHandler = async ({ locals, params, request, route }) => {
  const { db, act } = within(locals);
  const body = await wholeBody(request, mostFor(route.id));
  if (!body.ok) return refusal(body.error);
  const sent = { check: params.check, id: params.photo, bytes: body.value };
  const kept = await keepPhoto(db, act, sent);
  if (kept.ok) return json({ kept: kept.value });
  return json({ fault: kept.error }, { status: kept.error === 'ABSENT' ? 404 : 400 });
};
