import { error, json } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { mostFor, refusal, wholeBody } from '#server/access/body.ts';
import { keepPhoto, photoFor } from '#server/checks/photos.ts';
import type { RequestHandler } from './$types';

/** It never changes. */
export const GET: RequestHandler = async ({ locals, params }) => {
  const { db, act } = within(locals);
  const found = await photoFor(db, act.by, params.check, params.photo);
  if (!found) error(404);
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
