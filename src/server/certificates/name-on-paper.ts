import { isSayable } from '../worksheet/sayable.ts';

/** Letters that Unicode does not take apart into a plain one and its mark. */
const plain: Readonly<Record<string, string>> = {
  Ł: 'L',
  ł: 'l',
  Đ: 'D',
  đ: 'd',
  Ħ: 'H',
  ħ: 'h',
  ı: 'i',
};

/**
 * A name in the letters of the fonts that every reader of PDF has; a mark that they lack is left off its
 * letter. What has no such letter at all, as in other scripts, is shown as a question mark.
 */
export const nameOnPaper = (name: string): string =>
  [...name.normalize('NFC')]
    .map((letter) => {
      if (isSayable(letter)) return letter;
      const base = plain[letter] ?? letter.normalize('NFKD').replace(/\p{M}/gu, '');
      return base !== '' && [...base].every(isSayable) ? base : '?';
    })
    .join('');
