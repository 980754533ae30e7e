import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { readContentFiles } from '#server/content.ts';

/** What is written the same in both languages, by file and path: names, blanks alone, and words that are alike. */
const alike = [
  'glossary/materials.yaml terms.epdm.term: EPDM',
  'methods/shelf-angle.yaml site.weather.values.normal.name: Normal',
  'methods/window-sill.yaml site.weather.values.normal.name: Normal',
  'takeoffs/warm-storage.yaml parts.go.no: No',
  'written/patterns.yaml fault-point: “{step}”. {because}',
  'written/patterns.yaml key-point-point: “{step}”: {point} {reason}',
  'written/patterns.yaml reason-point: “{step}”. {reason}',
  'written/patterns.yaml value-point: {name}: {rule}. {because}',
];

type Said = { readonly path: string; readonly en: string; readonly es: string };

/** Every text below a value, with the way to it. */
function textsIn(value: unknown, path: readonly string[]): readonly Said[] {
  if (typeof value !== 'object' || value === null) return [];
  const { en, es } = value as { readonly en?: unknown; readonly es?: unknown };
  if (typeof en === 'string' && typeof es === 'string') return [{ path: path.join('.'), en, es }];
  return Object.entries(value).flatMap(([key, below]) => textsIn(below, [...path, key]));
}

const same = ({ en, es }: Said): boolean => en.trim().toLowerCase() === es.trim().toLowerCase();

const texts = readContentFiles(join(import.meta.dirname, '../../content'))
  .filter(({ path }) => path.endsWith('.yaml'))
  .flatMap(({ path, text }) =>
    textsIn(parse(text), []).map((said) => ({ ...said, path: `${path} ${said.path}` })),
  );

describe('truth', () => {
  test('what people read in the content is found', () => {
    expect(texts.length).toBeGreaterThan(3000);
  });

  test('no text of the content was left in the other language', () => {
    const found = texts.filter(same).map(({ path, en }) => `${path}: ${en}`);
    expect(found.toSorted()).toEqual(alike);
  });
});
