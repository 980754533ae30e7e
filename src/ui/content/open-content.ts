/**
 * Content as pages ask for it: text at an address that names its revision and the build that reads it,
 * so that a copy once kept stays right for ever and serves without signal.
 */
import { version } from '$app/environment';
import { error } from '@sveltejs/kit';
import type { Catalogue } from '#engine/compile/catalogue.ts';
import type { TermGroup } from '#engine/compile/content.ts';
import type { MethodBundle } from '#engine/compile/method-bundle.ts';
import type { TakeoffBundle } from '#engine/compile/takeoff-bundle.ts';
import { fromText } from '#engine/compile/transport.ts';
import type { WrittenBundle } from '#engine/compile/written-bundle.ts';
import type { SearchEntry } from '#ui/search/search-entry.ts';
import {
  contentAddress,
  currentAddress,
  type CurrentContent,
  methodPart,
  takeoffPart,
  writtenPart,
} from './content-address.ts';

type Fetch = typeof fetch;

/** Undefined where neither a server nor a kept copy answers: a page then says what it cannot show. */
export async function currentRevision(fetch: Fetch): Promise<string | undefined> {
  const response = await fetch(currentAddress).catch(() => undefined);
  return response?.ok ? ((await response.json()) as CurrentContent).revision : undefined;
}

export const openCatalogue = (fetch: Fetch, revision: string | undefined): Promise<Catalogue> =>
  open(fetch, revision, 'catalogue');

export const openMethod = (
  fetch: Fetch,
  revision: string | undefined,
  id: string,
): Promise<MethodBundle> => open(fetch, revision, methodPart(id));

export const openTakeoff = (
  fetch: Fetch,
  revision: string | undefined,
  id: string,
): Promise<TakeoffBundle> => open(fetch, revision, takeoffPart(id));

export const openWritten = (
  fetch: Fetch,
  revision: string | undefined,
  id: string,
): Promise<WrittenBundle> => open(fetch, revision, writtenPart(id));

export const openGlossary = (
  fetch: Fetch,
  revision: string | undefined,
): Promise<readonly TermGroup[]> => open(fetch, revision, 'glossary');

export const openSearch = (
  fetch: Fetch,
  revision: string | undefined,
): Promise<readonly SearchEntry[]> => open(fetch, revision, 'search');

async function open<T>(fetch: Fetch, revision: string | undefined, part: string): Promise<T> {
  if (revision === undefined) error(503, 'The content has not answered.');
  const response = await fetch(contentAddress(revision, part, version)).catch(() => undefined);
  if (!response) error(503, `The content has not answered for ${part}.`);
  if (response.status === 404) error(404, `The content has no ${part}.`);
  if (!response.ok) error(503, `The content answered ${response.status} for ${part}.`);
  return fromText(await response.text()) as T;
}
