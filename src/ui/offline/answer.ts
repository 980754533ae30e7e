import { currentAddress } from '#ui/content/content-address.ts';
import { isKeptPage } from './kept-pages.ts';

/** An empty page, in which the app draws whatever the address asks for. */
export const shellAddress = '/shell';
export const versionAddress = '/_app/version.json';

/**
 * - `shell`: a page that is drawn from what is kept.
 * - `kept`: a file or a part of the content; the network where it is not kept.
 * - `current`, `build`: which content and which build are current, for pages: those in use.
 * - `server`: a page that only the server makes; without signal the shell, which says so.
 * - `leave`: nothing of ours, as if nobody had looked at it.
 */
export type Answer = 'shell' | 'kept' | 'current' | 'build' | 'server' | 'leave';

type Asked = Pick<Request, 'method' | 'mode' | 'url'>;

/** How a request is answered on a site at `origin` that has these files. */
export function answerTo(
  { method, mode, url }: Asked,
  origin: string,
  files: ReadonlySet<string>,
): Answer {
  const address = new URL(url);
  if (method !== 'GET' || address.origin !== origin) return 'leave';
  const { pathname } = address;
  if (files.has(pathname) || pathname.startsWith('/_app/immutable/')) return 'kept';
  if (mode === 'navigate') return isKeptPage(pathname) ? 'shell' : 'server';
  if (pathname === currentAddress) return 'current';
  if (pathname === versionAddress) return 'build';
  return pathname.startsWith('/content/') ? 'kept' : 'leave';
}
