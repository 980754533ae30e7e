import { describe, expect, test } from 'vitest';
import { fold, wordsOf } from '#ui/search/fold.ts';
import type { SearchEntry } from '#ui/search/search-entry.ts';
import { searchIndex } from '#ui/search/search-index.ts';

const entry = (
  address: string,
  title: SearchEntry['title'],
  ...body: SearchEntry['body']
): SearchEntry => ({ kind: 'step', title, within: undefined, body, address });

const index = searchIndex([
  entry(
    '/prime',
    { en: 'Prime the wall', es: 'Aplique imprimador al muro' },
    { en: 'Keep the coat even.', es: 'Capa pareja, sin charcos.' },
  ),
  entry(
    '/roll',
    { en: 'Roll the sheet', es: 'Pase el rodillo' },
    { en: 'Pressure makes the bond.', es: 'La presión hace la adherencia. Niños lejos.' },
  ),
  entry(
    '/wait',
    { en: 'Wait until touch-dry', es: 'Espere a que seque al tacto' },
    { en: 'Wet primer traps solvent.', es: 'El imprimador húmedo atrapa solvente.' },
  ),
  entry(
    '/line',
    { en: 'Snap a line', es: 'Marque una línea' },
    { en: 'A straight top edge.', es: 'Una orilla recta.' },
  ),
]);

const found = (query: string) => index.find(query).map(({ address }) => address);

describe('truth', () => {
  test('a word typed without its accents finds the word written with them', () => {
    expect(found('nino')).toEqual(['/roll']);
    expect(found('linea')).toEqual(['/line']);
    expect(found('humedo')).toEqual(['/wait']);
  });

  test('a word typed with accents finds as well as one without', () => {
    expect(found('presión')).toEqual(found('presion'));
    expect(found('PRESIÓN')).toEqual(['/roll']);
  });

  test('either language finds the same step, whatever the screen speaks', () => {
    expect(found('roll')).toContain('/roll');
    expect(found('rodillo')).toContain('/roll');
  });

  test('another form of a word finds it in both languages', () => {
    expect(found('priming')).toContain('/prime');
    expect(found('imprimadores')).toContain('/prime');
  });

  test('the beginning of a word is enough', () => {
    expect(found('solv')).toEqual(['/wait']);
  });

  test('a long word with one letter wrong is still found', () => {
    expect(found('presure')).toEqual(['/roll']);
  });

  test('what holds all the words leaves out what holds one', () => {
    expect(found('imprimador')).toEqual(['/prime', '/wait']);
    expect(found('wet primer')).toEqual(['/wait']);
    expect(found('imprimador al muro')).toEqual(['/prime']);
  });

  test('where nothing holds all the words, what holds the most is found', () => {
    expect(found('roll xylophone')).toEqual(['/roll']);
  });

  test('a title outweighs a passing mention', () => {
    expect(found('imprimador')).toEqual(['/prime', '/wait']);
  });

  test('marks that mean something elsewhere are taken as spaces', () => {
    for (const query of ['touch-dry', 'touch:dry', '+touch -dry', 'touch* ~dry^2']) {
      expect(found(query)[0]).toBe('/wait');
    }
  });

  test('nothing asked and nothing known find nothing', () => {
    for (const query of ['', '   ', '…', 'xylophone']) expect(found(query)).toEqual([]);
  });
});

describe('laws', () => {
  test('folding keeps every letter in its place', () => {
    for (const text of ['Niño', 'línea ½', 'ﬁn', 'É—ß İ 𝔸']) {
      expect(fold(text)).toHaveLength(text.length);
    }
  });

  test('words written with combining marks are the same words', () => {
    expect(wordsOf('presión'.normalize('NFD'))).toEqual(['presion']);
  });
});
