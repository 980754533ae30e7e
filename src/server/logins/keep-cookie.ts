import type { RequestEvent } from '@sveltejs/kit';
import type { SignedIn } from './logins.ts';
import { sessionCookie } from './session.ts';

type Event = Pick<RequestEvent, 'cookies' | 'url'>;

/** Where the page came over TLS, the cookie goes over nothing else; a phone on a site's network may not. */
export const keepCookie = ({ cookies, url }: Event, { cookie, seconds }: SignedIn): void =>
  cookies.set(sessionCookie, cookie, {
    path: '/',
    httpOnly: true,
    sameSite: 'lax',
    secure: url.protocol === 'https:',
    maxAge: seconds,
  });

export const dropCookie = ({ cookies, url }: Event): void =>
  cookies.delete(sessionCookie, { path: '/', secure: url.protocol === 'https:' });
