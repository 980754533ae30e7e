import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { wordsOf } from '#ui/search/fold.ts';
import { foundText, marked } from '#ui/search/found-text.ts';
import type { SearchEntry } from '#ui/search/search-entry.ts';

const entry: SearchEntry = {
  kind: 'step',
  title: { en: 'Roll the sheet', es: 'Pase el rodillo' },
  within: undefined,
  body: [
    { en: 'Start at the top.', es: 'Empiece arriba.' },
    { en: 'Pressure makes the bond.', es: 'La presión hace la adherencia.' },
  ],
  address: '/',
};

const marks = (query: string, shown: 'en' | 'es') =>
  foundText(entry, query, shown)
    .stretches.filter(({ marked }) => marked)
    .map(({ text }) => text);

describe('truth', () => {
  test('the sentence that holds the word is chosen, and the word marked as written', () => {
    expect(marks('presion', 'es')).toEqual(['presión']);
    expect(marks('bond', 'en')).toEqual(['bond']);
  });

  test('a word of the other language shows that language', () => {
    expect(foundText(entry, 'presion', 'en').language).toBe('es');
    expect(foundText(entry, 'bond', 'en').language).toBe('en');
  });

  test('where no sentence holds it, the first stands there unmarked', () => {
    expect(foundText(entry, 'zzz', 'en')).toEqual({
      language: 'en',
      stretches: [{ text: 'Start at the top.', marked: false }],
    });
  });
});

describe('laws', () => {
  test('the stretches put together are the text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), fc.string(), (text, query) => {
        const stretches = marked(text, wordsOf(query));
        expect(stretches.map((stretch) => stretch.text).join('')).toBe(text);
      }),
    );
  });
});
