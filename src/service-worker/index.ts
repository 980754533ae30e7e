/**
 * Stands between the pages and the network, so that the app opens without signal. It may be newer than
 * the pages it serves: it takes its place as soon as its own edition is kept, and goes on serving the
 * one in use until somebody takes the newer.
 */
import { build, files, prerendered, version } from '$service-worker';
import {
  contentAddress,
  currentAddress,
  type CurrentContent,
} from '#ui/content/content-address.ts';
import { answerTo, shellAddress } from '#ui/offline/answer.ts';
import type { Edition } from '#ui/offline/edition.ts';
import { Keeper } from '#ui/offline/keeper.ts';
import { askFrom } from '#ui/offline/post.ts';

declare const self: ServiceWorkerGlobalScope;

const keeper = new Keeper(caches, (address, how) => fetch(address, how));
const ownFiles = [...files, ...prerendered];
const known = new Set([...build, ...ownFiles].filter((address) => address !== shellAddress));

self.addEventListener('install', (event) => {
  event.waitUntil(
    (async () => {
      const edition = await keepCurrent();
      if (!edition) throw new Error(`The server does not serve build ${version} any more.`);
      if (!(await keeper.used())) await keeper.use(edition);
      await self.skipWaiting();
    })(),
  );
});

self.addEventListener('activate', (event) => {
  event.waitUntil(self.clients.claim().then(tellAll));
});

self.addEventListener('message', (event) => {
  const ask = askFrom(event.data);
  if (!ask) return;
  event.waitUntil(
    (async () => {
      // Without signal there is nothing newer; how things stand is told all the same.
      if (ask.ask === 'look') await keepCurrent().catch(() => undefined);
      if (ask.ask === 'use') await keeper.use(ask.edition);
      await tellAll();
    })(),
  );
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const answer = answerTo(request, location.origin, known);
  if (answer === 'leave') return;
  if (answer === 'kept') event.respondWith(kept(request));
  else if (answer === 'shell') event.respondWith(orNetwork(keeper.find(shellAddress), request));
  else if (answer === 'server') event.respondWith(fetch(request).catch(() => shellOrError()));
  else event.respondWith(inUse(answer, request));
});

/** Keeps the server's content for this build. Undefined where the server is of another build. */
async function keepCurrent(): Promise<Edition | undefined> {
  const response = await fetch(currentAddress, { cache: 'no-store' });
  if (!response.ok) throw new Error(`The content answered ${response.status}.`);
  const current = (await response.json()) as CurrentContent;
  if (current.build !== version) return undefined;
  const edition = { build: version, revision: current.revision };
  const parts = current.parts.map((part) => contentAddress(current.revision, part, version));
  await keeper.keep(edition, [...build, ...ownFiles, ...parts]);
  await keeper.tidy(edition);
  return edition;
}

async function kept(request: Request): Promise<Response> {
  const { pathname, search } = new URL(request.url);
  const found = await keeper.find(pathname + search);
  return found ?? fetch(request).catch(() => absent(pathname));
}

/** An edition is kept whole: what it does not have is not there, with signal or without. */
async function absent(pathname: string): Promise<Response> {
  const used = await keeper.used();
  const isOfUsed = used && pathname.startsWith(`/content/${used.revision}/`);
  return isOfUsed ? new Response('', { status: 404 }) : Response.error();
}

const orNetwork = async (
  found: Promise<Response | undefined>,
  request: Request,
): Promise<Response> => (await found) ?? fetch(request);

const shellOrError = async (): Promise<Response> =>
  (await keeper.find(shellAddress)) ?? Response.error();

/**
 * Pages are told of the content and the build in use, not of what the server has by now: otherwise they
 * would turn to something newer by themselves.
 */
async function inUse(what: 'current' | 'build', request: Request): Promise<Response> {
  const used = await keeper.used();
  if (!used) return fetch(request);
  return Response.json(
    what === 'build' ? { version: used.build } : { revision: used.revision, build: used.build },
  );
}

async function tellAll(): Promise<void> {
  const standing = await keeper.standing(version);
  const pages = await self.clients.matchAll({ type: 'window', includeUncontrolled: true });
  for (const page of pages) page.postMessage(standing);
}
