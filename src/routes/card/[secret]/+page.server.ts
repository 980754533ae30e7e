import { error, fail, redirect, type RequestEvent } from '@sveltejs/kit';
import { textOf } from '#server/access/text-of.ts';
import { desk } from '#server/desk.ts';
import { keepCookie } from '#server/logins/keep-cookie.ts';
import { fresh, join, open } from '#server/people/enter-by-card.ts';
import { suggestedName } from '#server/people/suggested-name.ts';
import type { Actions, PageServerLoad } from './$types';

const fromOf = ({
  getClientAddress,
  request,
}: Pick<RequestEvent, 'getClientAddress' | 'request'>) => ({
  address: getClientAddress(),
  agent: request.headers.get('user-agent') ?? '',
});

export const load: PageServerLoad = async (event) => {
  event.setHeaders({ 'cache-control': 'private, no-store' });
  const { database } = await desk();
  const now = new Date(event.locals.at);
  const opened = await open(database.db, event.params.secret, fromOf(event), now);
  if (!opened.ok) error(opened.error.code === 'TOO_OFTEN' ? 429 : 404);
  const { companyName, name, email, expiresAt, knownAs } = opened.value;
  return { companyName, name, expiresAt, knownAs, suggested: email ?? suggestedName(name) };
};

type Event = RequestEvent<{ secret: string }>;

const by = (deed: 'fresh' | 'join', enter: typeof fresh) => async (event: Event) => {
  const { auth, database } = await desk();
  const form = await event.request.formData();
  const given = { name: textOf(form, 'name'), password: textOf(form, 'password') };
  const { secret } = event.params;
  const now = new Date(event.locals.at);
  const done = await enter({ auth, db: database.db }, secret, given, fromOf(event), now);
  if (!done.ok) {
    const status = done.error.code === 'TOO_OFTEN' ? 429 : 400;
    return fail(status, { deed, fault: done.error, name: given.name });
  }
  keepCookie(event, done.value.signedIn);
  redirect(303, `/company/${done.value.company}`);
};

export const actions = { fresh: by('fresh', fresh), join: by('join', join) } satisfies Actions;
