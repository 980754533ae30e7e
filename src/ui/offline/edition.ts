/**
 * What a browser keeps, so that the app opens without signal: whole editions, each on a shelf of its
 * own among the browser's caches. One of them is in use; a newer one waits there until somebody takes it.
 */

/** The build that draws the pages, and the revision of the content in them. */
export type Edition = { readonly build: string; readonly revision: string };

/** Of all editions in this browser: the one that pages are made from, and a newer one that is whole. */
export type Standing = {
  readonly used: Edition | undefined;
  readonly ready: Edition | undefined;
};

/** Begins the name of every shelf, of this build's and of those before and after it. */
export const shelves = 'underlap/';
const beginning = `${shelves}edition/`;

/** Names which edition is in use. */
export const usedShelf = `${shelves}used`;

export const shelfOf = ({ build, revision }: Edition): string =>
  `${beginning}${encodeURIComponent(build)}/${encodeURIComponent(revision)}`;

export function editionOn(shelf: string): Edition | undefined {
  if (!shelf.startsWith(beginning)) return undefined;
  const [build, revision, ...rest] = shelf.slice(beginning.length).split('/');
  if (!build || !revision || rest.length > 0) return undefined;
  return { build: decodeURIComponent(build), revision: decodeURIComponent(revision) };
}

export const isSame = (one: Edition | undefined, other: Edition | undefined): boolean =>
  one?.build === other?.build && one?.revision === other?.revision;
