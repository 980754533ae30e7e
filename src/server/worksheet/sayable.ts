/**
 * Text as the fonts that every reader of PDF has can say it: Windows code page 1252 (ISO 32000-1,
 * annex D, WinAnsiEncoding). The signs of the working that are not in it become ones that are.
 */
const stand: Readonly<Record<string, string>> = {
  '−': '–',
  '≈': '~',
  '≤': '<=',
  '≥': '>=',
  '≠': '<>',
  '→': '»',
  '′': "'",
  '″': '"',
  '⁴': '^4',
  '⁵': '^5',
  '⁶': '^6',
  π: 'pi',
  '\u202f': ' ',
};

/** Beside Latin 1. */
const others = '–—‘’‚“”„†‡•…€‰‹›ˆ™ŒœŠš˜ŸŽžƒ';

export const isSayable = (character: string): boolean =>
  /^[\n\x20-\x7e\xa0-\xff]$/.test(character) || others.includes(character);

/** What still cannot be said is shown as a question mark, so that nothing disappears unseen. */
export const sayable = (text: string): string =>
  [...text.replace(/(\d) %/g, '$1\u00a0%')]
    .map((character) => stand[character] ?? character)
    .map((character) => (character.length > 1 || isSayable(character) ? character : '?'))
    .join('');
