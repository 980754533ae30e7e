import { describe, expect, test } from 'vitest';
import { languages } from '#engine/text.ts';
import { problemOf } from '#engine/takeoff/problem.ts';
import { workedSolution } from '#engine/takeoff/worked.ts';
import { openContent } from '#server/content.ts';
import { orderedSheet } from '#server/worksheet/ordered-sheet.ts';
import { isSayable, sayable } from '#server/worksheet/sayable.ts';
import { worksheetPdf } from '#server/worksheet/worksheet-pdf.ts';
import { streamsOf, textOf } from './pdf-text.ts';

const content = openContent();
const everyFamily = [...content.takeoffs.keys()].join(',');

const order = (asked: Readonly<Record<string, string>>) =>
  orderedSheet(content, new URLSearchParams(asked));

const ordered = (asked: Readonly<Record<string, string>>) => {
  const found = order(asked);
  if (!found.ok) throw new Error(found.error);
  return found.value;
};

const pdf = async (asked: Readonly<Record<string, string>>): Promise<Buffer> => {
  const { sheet, language } = ordered(asked);
  return worksheetPdf(sheet, language);
};

const order3 = { families: 'fasteners-one-bar,sheet-girth', seed: '42', count: '3' };

/** In one line: the page breaks lines where it wants. */
const flat = (text: string): string => text.replace(/\s+/g, ' ');

const textIn = (bytes: Buffer): string => flat(streamsOf(bytes).map(textOf).join('\n'));

describe('truth', () => {
  test('the same order gives the same file to the last byte', async () => {
    expect((await pdf(order3)).equals(await pdf(order3))).toBe(true);
    expect((await pdf({ ...order3, seed: '43' })).equals(await pdf(order3))).toBe(false);
  });

  test('a sheet is a PDF on letter paper in its language', async () => {
    const bytes = await pdf({ ...order3, lang: 'es' });
    const raw = bytes.toString('latin1');
    expect(raw.startsWith('%PDF-1.')).toBe(true);
    expect(raw).toContain('/MediaBox [0 0 612 792]');
    expect(raw).toContain('/Lang (es)');
    expect(raw).toContain('(D:19700101000000Z)');
  });

  test.each(languages)('every question and every answer is on it in %s', async (lang) => {
    const { sheet } = ordered({ ...order3, lang });
    const text = textIn(await pdf({ ...order3, lang }));
    for (const { seed, instance } of sheet.problems) {
      const { intro, asks } = problemOf(instance);
      expect(text).toContain(seed);
      for (const said of [intro, ...asks.map(({ ask }) => ask)]) {
        expect(text).toContain(flat(sayable(said[lang])));
      }
      for (const { part } of instance.parts) {
        const answer = workedSolution(instance, part.id).at(-1)!.text[lang];
        expect(text).toContain(flat(sayable(answer)));
      }
    }
  });

  test('no answer stands before the key', async () => {
    const { sheet } = ordered(order3);
    const text = textIn(await pdf(order3));
    const [asked = '', key = ''] = text.split('Answer key');
    for (const { instance } of sheet.problems) {
      for (const { part } of instance.parts) {
        const answer = sayable(workedSolution(instance, part.id).at(-1)!.text.en);
        expect(asked).not.toContain(answer);
        expect(key).toContain(answer);
      }
    }
  });

  test('the drawings are on it, with their hatches', async () => {
    const raw = (await pdf(order3)).toString('latin1');
    expect(raw).toContain('/PatternType 1');
  });

  test.each([
    [{ families: 'fasteners-on-bar' }, 'try fasteners-one-bar'],
    [{ families: '' }, 'choose one or more'],
    [{ families: 'sheet-girth', count: '0' }, '1 to 40'],
    [{ families: 'sheet-girth', count: 'ten' }, '1 to 40'],
    [{ families: 'sheet-girth', seed: 'x' }, 'nine digits'],
    [{ families: 'sheet-girth', lang: 'fr' }, 'en, es'],
  ])('an order of %j is refused with the cure', (asked, told) => {
    const found = order(asked);
    expect(found.ok ? '' : found.error).toContain(told);
  });

  test('families may be listed or repeated, in any order', () => {
    const listed = ordered({ ...order3, families: 'sheet-girth,fasteners-one-bar' }).sheet;
    const repeated = orderedSheet(
      content,
      new URLSearchParams('families=sheet-girth&families=fasteners-one-bar&seed=42&count=3'),
    );
    expect(repeated.ok && repeated.value.sheet.problems.map(({ seed }) => seed)).toEqual(
      listed.problems.map(({ seed }) => seed),
    );
  });
});

describe('laws', () => {
  test('nothing of any family in any language is beyond the fonts', () => {
    const { sheet } = ordered({ families: everyFamily, count: '40', seed: '7' });
    const texts = sheet.problems.flatMap(({ instance }) => {
      const { title, intro, asks, givens, numbers } = problemOf(instance);
      return [
        title,
        intro,
        ...asks.map(({ ask }) => ask),
        ...[...givens, ...numbers].flatMap(({ name, value }) => [name, value]),
        ...instance.parts.flatMap(({ part }) => [
          ...workedSolution(instance, part.id).map(({ text }) => text),
          ...part.slips.map(({ tell }) => tell),
        ]),
      ];
    });
    const said = texts.flatMap((text) => languages.map((language) => text[language]));
    expect(said.filter((text) => sayable(text).includes('?') !== text.includes('?'))).toEqual([]);
    expect([...sayable(said.join(''))].filter((character) => !isSayable(character))).toEqual([]);
  });

  test('every page has its number, and the last is the number of pages', async () => {
    const bytes = await pdf({ families: everyFamily, count: '30', seed: '5' });
    const pages = streamsOf(bytes)
      .map(textOf)
      .flatMap((text) => /Page (\d+) of (\d+)/.exec(text)?.slice(1).map(Number) ?? []);
    const count = bytes.toString('latin1').match(/\/Type \/Page\b/g)?.length ?? 0;
    expect(count).toBeGreaterThan(10);
    expect(pages.filter((_, place) => place % 2 === 0)).toEqual(
      Array.from({ length: count }, (_, place) => place + 1),
    );
    expect(new Set(pages.filter((_, place) => place % 2 === 1))).toEqual(new Set([count]));
  });
});
