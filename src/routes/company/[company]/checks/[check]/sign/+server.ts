import { json } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { jsonBody, mostFor, refusal } from '#server/access/body.ts';
import { sign } from '#server/checks/sign.ts';
import { currentContent } from '#server/current-content.ts';
import { longestPassword } from '#server/logins/auth.ts';
import type { RequestHandler } from './$types';

/** Signed by password, which is asked anew: an open phone is nobody's name. */
export const POST: RequestHandler = async ({ locals, params, request, route }) => {
  const { db, desk, session, act } = within(locals);
  const body = await jsonBody(request, { most: mostFor(route.id) });
  if (!body.ok) return refusal(body.error);
  const given = (body.value ?? {}) as Readonly<Record<string, unknown>>;
  const { password, brokenOff, sheet } = given;
  const signed = await sign(
    { db, auth: desk.auth, login: session.login },
    act,
    await currentContent(),
    {
      id: params.check,
      sheet,
      password: typeof password === 'string' ? password.slice(0, longestPassword + 1) : '',
      brokenOff: typeof brokenOff === 'string' ? brokenOff.slice(0, 2000) : undefined,
    },
  );
  return signed.ok ? json(signed.value) : json({ faults: signed.error }, { status: 400 });
};
