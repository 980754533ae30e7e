import type { Language, Text } from '#engine/text.ts';

/** A name in braces within a text. */
export const placeholder = /\{([^{}]*)\}/g;

/** Every name that a text asks for, as written in that language. */
export const namesAskedIn = (text: Text, language: Language): readonly string[] =>
  [...text[language].matchAll(placeholder)].map(([, name = '']) => name);

export const inEach = (write: (language: Language) => string): Text => ({
  en: write('en'),
  es: write('es'),
});

/** Puts values in the places of their names. */
export const fillText = (text: Text, valueOf: (name: string, language: Language) => string): Text =>
  inEach((language) =>
    text[language].replace(placeholder, (_, name: string) => valueOf(name, language)),
  );
