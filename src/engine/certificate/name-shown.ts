/** What of a holder's name a stranger may read: the holder chooses. */
export const namesShown = ['full', 'initials', 'none'] as const;
export type NameShown = (typeof namesShown)[number];

export const isNameShown = (value: string): value is NameShown =>
  namesShown.some((shown) => shown === value);

/** The first sign of a word, which may take more than one unit. */
const first = (word: string): string => [...word][0] ?? '';

/** `Ana María Ruiz` by initials is `A. M. R.`; undefined where nothing may be read. */
export function shownName(name: string, shown: NameShown): string | undefined {
  const words = name.split(/\s+/).filter((word) => word !== '');
  if (shown === 'none' || words.length === 0) return undefined;
  return shown === 'full' ? words.join(' ') : words.map((word) => `${first(word)}.`).join(' ');
}
