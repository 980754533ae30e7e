import { describe, expect, test } from 'vitest';
import { languages } from '#engine/text.ts';
import { m } from '#ui/messages/generated/messages.js';
import { baseLocale, locales } from '#ui/messages/generated/runtime.js';

type Messages = Readonly<Record<string, unknown>>;

const files = import.meta.glob<Messages>('/src/ui/messages/*/*.json', {
  eager: true,
  import: 'default',
});

const entriesOf = (language: string): readonly (readonly [key: string, message: unknown])[] =>
  Object.entries(files)
    .filter(([path]) => path.includes(`/messages/${language}/`))
    .flatMap(([, messages]) => Object.entries(messages))
    .filter(([key]) => key !== '$schema');

const en = entriesOf('en');
const es = entriesOf('es');
const english = new Map(en);
const spanish = new Map(es);

/** What is written the same in both languages: blanks and signs alone, the product's name, a word that is alike. */
const alike = [
  'jobs_person_miles',
  'jobs_role_need',
  'numbers_percent',
  'order_step',
  'points_figure',
  'product_name',
  'roster_set',
  'takeoff_chart_factor',
];

/** A message as it is compared: letters as they are, however they are cased. */
const spoken = (message: unknown): string => JSON.stringify(message).toLowerCase();

/** The names in braces that a message is filled in with, sorted. */
const blanks = (message: unknown) =>
  [...JSON.stringify(message).matchAll(/\{(\w+)\}/g)].map(([, name]) => name).sort();

describe('truth', () => {
  test('the product speaks the languages its content is written in', () => {
    expect([...locales].sort()).toEqual([...languages].sort());
    expect(baseLocale).toBe('en');
  });

  test('every message stands once in either language', () => {
    expect([...spanish.keys()].sort()).toEqual([...english.keys()].sort());
    expect([en.length, es.length]).toEqual([english.size, spanish.size]);
  });

  test('no message was left in the other language', () => {
    const same = en.filter(([key, message]) => spoken(message) === spoken(spanish.get(key)));
    expect(same.map(([key]) => key).toSorted()).toEqual(alike);
  });

  test('every message written was compiled', () => {
    expect(english.size).toBeGreaterThan(0);
    expect(Object.keys(m).sort()).toEqual([...english.keys()].sort());
  });

  test.each([...english.keys()])('%s has words, and the same blanks, in both languages', (key) => {
    expect(JSON.stringify(english.get(key)).trim().length).toBeGreaterThan(2);
    expect(JSON.stringify(spanish.get(key)).trim().length).toBeGreaterThan(2);
    expect(new Set(blanks(spanish.get(key)))).toEqual(new Set(blanks(english.get(key))));
  });
});
