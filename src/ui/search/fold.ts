/**
 * A letter without its case and accents, so that what a telephone's keyboard types finds what was
 * written: `nino` finds `niño`. As long as the text itself, letter for letter, so that a place in one
 * is the same place in the other.
 */
export const fold = (text: string): string =>
  [...text]
    .map((letter) => foldLetter(letter).padEnd(letter.length).slice(0, letter.length))
    .join('');

const foldLetter = (letter: string): string =>
  letter.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();

/** The words of a text, folded: what stands between marks and spaces. */
export const wordsOf = (text: string): readonly string[] =>
  fold(text.normalize('NFC')).match(/[\p{L}\p{N}]+/gu) ?? [];
