/** What the board has a column for: the schemes of the content, those that others require first. */
import type { Scheme } from '#engine/exam/scheme.ts';
import type { Text } from '#engine/text.ts';
import { currentContent } from '../current-content.ts';

export type Column = { readonly id: string; readonly title: Text };

export const schemesNow = async (): Promise<readonly Scheme[]> =>
  inOrder([...(await currentContent()).schemes.values()]);

export const columnsOf = (schemes: readonly Scheme[]): readonly Column[] =>
  schemes.map(({ id, title }) => ({ id, title }));

function inOrder(schemes: readonly Scheme[]): readonly Scheme[] {
  const placed = new Set<Scheme>();
  const place = (scheme: Scheme | undefined): void => {
    if (!scheme || placed.has(scheme)) return;
    for (const id of scheme.requires) place(schemes.find((one) => one.id === id));
    placed.add(scheme);
  };
  schemes.toSorted((a, b) => (a.id < b.id ? -1 : 1)).forEach(place);
  return [...placed];
}
