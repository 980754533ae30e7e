import { building } from '$app/environment';
import {
  error,
  type Handle,
  type HandleServerError,
  isHttpError,
  isRedirect,
  json,
  redirect,
  type RequestEvent,
} from '@sveltejs/kit';
import { sequence } from '@sveltejs/kit/hooks';
import { lengthFault, mostFor, refusal } from '#server/access/body.ts';
import { refused } from '#server/api/problem.ts';
import { enter } from '#server/access/entrance.ts';
import { outageOf } from '#server/database/outage.ts';
import { desk } from '#server/desk.ts';
import { report } from '#server/fault-report.ts';
import { ownLog } from '#server/log.ts';
import { renewed } from '#server/logins/logins.ts';
import { sessionCookie } from '#server/logins/session.ts';
import { keepCookie } from '#server/logins/keep-cookie.ts';
import { pageAnswer } from '#server/page-answer.ts';
import { safeHeaders } from '#server/safe-headers.ts';
import { m } from '#ui/messages/generated/messages.js';
import { paraglideMiddleware } from '#ui/messages/generated/server.js';

const day = 24 * 60 * 60 * 1000;

const inLanguage: Handle = ({ event, resolve }) =>
  paraglideMiddleware(event.request, async ({ locale }) => {
    event.locals.language = locale;
    // The shell is the same for all: the browser finds the language when it fills it.
    const written = event.route.id === '/shell' ? '' : locale;
    const response = await resolve(event, {
      transformPageChunk: ({ html }) => html.replace('%lang%', written),
    });
    for (const [name, value] of Object.entries(safeHeaders)) response.headers.set(name, value);
    // What is made at build is packed there.
    if (building) return response;
    return pageAnswer(event.request.headers, response, event.locals.session !== undefined);
  });

/** An address may name people and what was looked for: it is logged by its route alone. */
const aboutRequest = ({ route, request }: RequestEvent) => ({
  route: route.id ?? 'none',
  method: request.method,
});

const asksForPage = ({ request, isDataRequest }: RequestEvent): boolean =>
  isDataRequest || (request.headers.get('accept') ?? '').includes('text/html');

/** Programs are told in one form alone. */
const isApi = ({ route }: RequestEvent): boolean => route.id?.startsWith('/api/') ?? false;

const laterSeconds = '5';

/** An outage ends: whoever asked is told to ask again, and not that the app is at fault. */
function answered({ locals }: RequestEvent, response: Response): Response {
  if (!locals.isOutage || response.status !== 500) return response;
  const headers = new Headers(response.headers);
  headers.set('retry-after', laterSeconds);
  return new Response(response.body, { status: 503, headers });
}

const watched: Handle = async ({ event, resolve }) => {
  if (building) return resolve(event);
  const start = performance.now();
  let status = 500;
  try {
    const response = answered(event, await resolve(event));
    ({ status } = response);
    return response;
  } catch (thrown) {
    if (isHttpError(thrown) || isRedirect(thrown)) ({ status } = thrown);
    throw thrown;
  } finally {
    const milliseconds = Math.round(performance.now() - start);
    ownLog().info('request', { ...aboutRequest(event), status, milliseconds });
  }
};

/** Tells an outage that was met on the way to the page, where no page can show it. */
const throughOutages: Handle = async ({ event, resolve }) => {
  try {
    return await resolve(event);
  } catch (thrown) {
    const outage = outageOf(thrown);
    if (!outage) throw thrown;
    const id = report(ownLog(), thrown, { ...aboutRequest(event), outage });
    const said = { message: m.error_outage_cure(), code: 'OUTAGE', id };
    if (isApi(event)) return refused({ code: 'OUTAGE', id, seconds: Number(laterSeconds) });
    if (asksForPage(event)) error(503, said);
    return json(said, { status: 503, headers: { 'retry-after': laterSeconds } });
  }
};

/** Whether what is sent is not too much is asked before any of it is read. */
const withinLimits: Handle = ({ event, resolve }) => {
  const tooMuch = building ? undefined : lengthFault(event.request, mostFor(event.route.id));
  if (!tooMuch) return resolve(event);
  if (isApi(event)) return refused({ code: 'TOO_LARGE', detail: tooMuch.message });
  if (asksForPage(event)) error(413, { message: m.error_large_cure(), code: 'TOO_LARGE' });
  return refusal(tooMuch);
};

export const handleError: HandleServerError = ({ error: thrown, event, status }) => {
  if (status === 413) return { message: m.error_large_cure(), code: 'TOO_LARGE' };
  // An address that is not there, a form in the wrong encoding: no fault of the app.
  if (status < 500) return { message: m.error_missing_cure() };
  const outage = outageOf(thrown);
  const id = report(ownLog(), thrown, { ...aboutRequest(event), ...(outage ? { outage } : {}) });
  if (!outage) return { message: m.error_fault_cure(), id };
  event.locals.isOutage = true;
  return { message: m.error_outage_cure(), code: 'OUTAGE', id };
};

/** A page leads to the sign-in page and back; what is asked for in the background is told. */
function toSignIn(event: RequestEvent): Response {
  const { url, request } = event;
  if (!asksForPage(event)) return json({ error: 'SIGN_IN' }, { status: 401 });
  const back = request.method === 'GET' ? url.pathname + url.search : '/company';
  redirect(303, `/sign-in?to=${encodeURIComponent(back)}`);
}

function forNobodyElse(response: Response): Response {
  response.headers.set('cache-control', 'private, no-store');
  return response;
}

const throughItsDoor: Handle = async ({ event, resolve }) => {
  const now = new Date();
  const { locals, route, request, url, params, cookies } = event;
  locals.at = now.toISOString();
  // An address of no route: the page that says so. A page made at build has no door to pass.
  if (route.id === null || building) return resolve(event);
  const cookie = cookies.get(sessionCookie);
  const company = params['company'];
  const { method } = request;
  const authorization = request.headers.get('authorization') ?? undefined;
  const entrance = await enter(
    { route: route.id, method, search: url.search, company, cookie, authorization, now },
    desk,
  );
  if (entrance.answer === 'no token') return refused(entrance.problem);
  if (entrance.answer === 'absent' && isApi(event)) return refused({ code: 'ABSENT' });
  if (entrance.answer === 'open') return resolve(event);
  if (entrance.answer === 'sign in') return toSignIn(event);
  if (entrance.answer === 'absent') error(404, m.error_missing());
  if (entrance.answer === 'refused') error(403, m.error_refused());
  locals.desk = await desk();
  if (entrance.answer === 'token') {
    locals.bearer = entrance.bearer;
    return forNobodyElse(await resolve(event));
  }
  locals.session = entrance.session;
  if (entrance.member) locals.member = entrance.member;
  if (cookie && now.getTime() - entrance.session.renewed.getTime() > day) {
    const again = await renewed(locals.desk.auth, cookie);
    if (again) keepCookie(event, again);
  }
  return forNobodyElse(await resolve(event));
};

export const handle = sequence(watched, inLanguage, withinLimits, throughOutages, throughItsDoor);
