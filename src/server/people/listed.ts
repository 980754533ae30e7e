/** What the lists of people and of crews have in common: beginnings of words, and pages by neighbours. */
import { sql } from 'kysely';
import { folded } from './folded.ts';

const longestSearch = 100;

export const wordsIn = (search: string): readonly string[] =>
  folded(search.slice(0, longestSearch)).split(' ').filter(Boolean);

/** Whether a word of a folded column begins so. */
export const wordBegins = (column: string, word: string) =>
  sql<boolean>`' ' || ${sql.ref(column)} like ${`% ${word.replace(/[\\%_]/g, '\\$&')}%`} escape '\\'`;

/** Whom to ask for after or before for the neighbouring pages; undefined where there are none. */
export type Neighbours = { readonly next?: string; readonly previous?: string };

/**
 * The page of rows that were asked for one longer than it, in the order in which it is read. `from` is
 * undefined for the first page; backwards, the rows come as they were walked, the nearest first.
 */
export function pageOf<Row extends { readonly id: string }>(
  rows: readonly Row[],
  most: number,
  from: { readonly isBackwards: boolean } | undefined,
): Neighbours & { readonly shown: readonly Row[] } {
  const isMore = rows.length > most;
  const isBackwards = from?.isBackwards ?? false;
  const cut = rows.slice(0, most);
  const shown = isBackwards ? cut.toReversed() : cut;
  const [first, last] = [shown[0]?.id, shown.at(-1)?.id];
  const hasNext = isBackwards || isMore;
  const hasPrevious = isBackwards ? isMore : from !== undefined;
  return {
    shown,
    ...(hasNext && last !== undefined ? { next: last } : {}),
    ...(hasPrevious && first !== undefined ? { previous: first } : {}),
  };
}
