/**
 * Full-text search in the browser, over both languages at once, with accents folded. Words are
 * stemmed by the rules of the language that each field is written in (Porter for English, Snowball
 * for Spanish, as lunr has them); unfinished words match by their beginning and long ones with one
 * letter wrong. Only what holds the most of the words asked for is found, all of them where something
 * does; what lunr scores highest (BM25) comes first.
 */
import lunr from 'lunr';
import stemmerSupport from 'lunr-languages/lunr.stemmer.support.js';
import spanish from 'lunr-languages/lunr.es.js';
import { languages, type Language } from '#engine/text.ts';
import { wordsOf } from './fold.ts';
import type { SearchEntry } from './search-entry.ts';

stemmerSupport(lunr);
spanish(lunr);
const stemSpanish = lunr.es.stemmer as (token: lunr.Token) => lunr.Token;
lunr.Pipeline.registerFunction(stemByField, 'stem by field');

export type SearchIndex = {
  readonly entries: readonly SearchEntry[];
  readonly find: (query: string) => readonly SearchEntry[];
};

const parts = ['title', 'within', 'body'] as const;
const boosts = { title: 8, within: 1, body: 2 };

const fieldsOf = (language: Language) => parts.map((part) => `${language}-${part}`);

export function searchIndex(entries: readonly SearchEntry[]): SearchIndex {
  const index = lunr(function () {
    this.pipeline.reset();
    this.pipeline.add(stemByField);
    this.searchPipeline.reset();
    this.searchPipeline.add(stemByField);
    this.tokenizer = tokensOf as unknown as typeof lunr.tokenizer;
    this.ref('place');
    for (const language of languages) {
      for (const part of parts) this.field(`${language}-${part}`, { boost: boosts[part] });
    }
    entries.forEach((entry, place) => this.add(documentOf(entry, place)));
  });

  const find = (query: string): readonly SearchEntry[] => {
    const held = new Map<number, { words: number; score: number }>();
    for (const word of new Set(wordsOf(query))) {
      for (const { ref, score } of index.query((asked) => ask(asked, word))) {
        const before = held.get(Number(ref)) ?? { words: 0, score: 0 };
        held.set(Number(ref), { words: before.words + 1, score: before.score + score });
      }
    }
    const most = Math.max(0, ...[...held.values()].map(({ words }) => words));
    return [...held]
      .filter(([, { words }]) => words === most)
      .sort(([a, one], [b, other]) => other.score - one.score || a - b)
      .flatMap(([place]) => entries[place] ?? []);
  };
  return { entries, find };
}

function documentOf(entry: SearchEntry, place: number): object {
  const fields = languages.flatMap((language) => [
    [`${language}-title`, entry.title[language]],
    [`${language}-within`, entry.within?.[language] ?? ''],
    [`${language}-body`, entry.body.map((text) => text[language]).join(' ')],
  ]);
  return Object.fromEntries([['place', String(place)], ...fields]) as object;
}

const tokensOf = (text: string | undefined, metadata: object): readonly lunr.Token[] =>
  wordsOf(text ?? '').map((word) => new lunr.Token(word, { ...metadata }));

function stemByField(token: lunr.Token): lunr.Token {
  const [field = ''] =
    (token as unknown as { metadata: { fields?: string[] } }).metadata.fields ?? [];
  return field.startsWith('es') ? stemSpanish(token) : lunr.stemmer(token);
}

function ask(asked: lunr.Query, word: string): void {
  const { NONE, TRAILING } = lunr.Query.wildcard;
  for (const language of languages) {
    const fields = fieldsOf(language);
    asked.term(word, { fields, boost: 10, wildcard: NONE });
    if (word.length < 2) continue;
    asked.term(word, { fields, boost: 2, wildcard: TRAILING, usePipeline: false });
    if (word.length > 4) asked.term(word, { fields, boost: 1, editDistance: 1 });
  }
}
