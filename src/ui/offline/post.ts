import { isFields } from '#engine/fields.ts';
import type { Edition, Standing } from './edition.ts';

/**
 * What a page asks of the keeper: how things stand, to look whether there is anything newer, or to use
 * an edition from now on. Every answer is a Standing.
 */
export type Ask =
  | { readonly ask: 'standing' }
  | { readonly ask: 'look' }
  | { readonly ask: 'use'; readonly edition: Edition };

const isEdition = (value: unknown): value is Edition =>
  isFields(value) && typeof value['build'] === 'string' && typeof value['revision'] === 'string';

/** Undefined for what somebody else may have posted. */
export function askFrom(data: unknown): Ask | undefined {
  if (!isFields(data)) return undefined;
  const { ask, edition } = data;
  if (ask === 'standing' || ask === 'look') return { ask };
  return ask === 'use' && isEdition(edition) ? { ask, edition } : undefined;
}

export function standingFrom(data: unknown): Standing | undefined {
  if (!isFields(data) || !('used' in data) || !('ready' in data)) return undefined;
  const { used, ready } = data;
  const isRight = [used, ready].every((edition) => edition === undefined || isEdition(edition));
  return isRight ? (data as Standing) : undefined;
}
