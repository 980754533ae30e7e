import { languages, type Language } from '#engine/text.ts';
import { fold, wordsOf } from './fold.ts';
import type { SearchEntry } from './search-entry.ts';

/** A stretch of text, marked where it is what was asked for. */
export type Stretch = { readonly text: string; readonly marked: boolean };

/** The sentence of an entry that shows best why it was found, in the language it was found in. */
export type FoundText = { readonly language: Language; readonly stretches: readonly Stretch[] };

export function foundText(entry: SearchEntry, query: string, shown: Language): FoundText {
  const asked = wordsOf(query);
  const sides = languages.toSorted((a, b) => Number(b === shown) - Number(a === shown));
  const best = sides
    .flatMap((language) => entry.body.map((text) => ({ language, text: text[language] })))
    .map((line) => ({ ...line, held: asked.filter((word) => holds(line.text, word)).length }))
    .reduce((best, line) => (line.held > best.held ? line : best));
  return { language: best.language, stretches: marked(best.text, asked) };
}

const holds = (text: string, asked: string): boolean =>
  wordsOf(text).some((word) => isForm(word, asked));

/** Near enough for the eye: the index itself has stemmed and forgiven more exactly. */
const isForm = (word: string, asked: string): boolean =>
  word.startsWith(asked) || (asked.length > 4 && word.startsWith(asked.slice(0, -2)));

/** The text in stretches; put together they are the text. */
export function marked(text: string, asked: readonly string[]): readonly Stretch[] {
  const folded = fold(text);
  const stretches: Stretch[] = [];
  let from = 0;
  for (const { 0: word, index } of folded.matchAll(/[\p{L}\p{N}]+/gu)) {
    if (!asked.some((each) => isForm(word, each))) continue;
    if (index > from) stretches.push({ text: text.slice(from, index), marked: false });
    stretches.push({ text: text.slice(index, index + word.length), marked: true });
    from = index + word.length;
  }
  if (from < text.length) stretches.push({ text: text.slice(from), marked: false });
  return stretches;
}
