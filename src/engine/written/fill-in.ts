import type { DataSheet } from '#engine/method/data-sheet.ts';
import type { NumberId } from '#engine/method/method.ts';
import type { Language, Text } from '#engine/text.ts';
import { inEach, numberWords } from './number-words.ts';

const placeholder = /\{([^{}]*)\}/g;

/** The names in braces in a text of one language. */
export const namesIn = (text: string): readonly string[] =>
  [...text.matchAll(placeholder)].map(([, name = '']) => name);

/** The text with every name in braces replaced; one that stands for nothing stays as it is. */
export const filled = (
  text: Text,
  valueOf: (name: string, language: Language) => string | undefined,
): Text =>
  inEach((language) =>
    text[language].replace(placeholder, (whole, name: string) => valueOf(name, language) ?? whole),
  );

/** The text with the numbers of the data sheet put in, as the trade writes them. */
export const withNumbers = (text: Text, { numbers }: DataSheet): Text =>
  filled(text, (name, language) => {
    const number = numbers.get(name as NumberId);
    return number && numberWords(number)?.[language];
  });
