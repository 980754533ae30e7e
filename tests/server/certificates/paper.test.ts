import { describe, expect, test } from 'vitest';
import { scopeOf } from '#engine/certificate/scope.ts';
import { languages } from '#engine/text.ts';
import { cardPdf } from '#server/certificates/card-pdf.ts';
import { certificatePdf } from '#server/certificates/certificate-pdf.ts';
import { nameOnPaper } from '#server/certificates/name-on-paper.ts';
import type { OnPaper } from '#server/certificates/on-paper.ts';
import { dayOnPaper } from '#server/certificates/paper-words.ts';
import { streamsOf, textOf } from '../worksheet/pdf-text.ts';
import { certified } from '../../engine/credential/certified.ts';
import { content } from './granted.ts';

const onPaper: OnPaper = {
  name: 'Ana María Ruiz Cañón',
  issuer: 'North Wall',
  scope: certified.scope,
  passed: certified.passed,
  grantedOn: certified.grantedOn,
  validUntil: certified.until,
  issue: 2,
  address: certified.address,
  isDemo: false,
};

const flat = (text: string): string => text.replace(/\s+/g, ' ');
const pagesOf = (bytes: Buffer): number =>
  bytes.toString('latin1').match(/\/Type \/Page\b/g)?.length ?? 0;
const textIn = (bytes: Buffer): string => flat(streamsOf(bytes).map(textOf).join('\n'));

describe.each(languages)('in %s', (language) => {
  test('the certificate says who, what, until when, and what it does not say', async () => {
    const bytes = await certificatePdf(onPaper, language, 'letter');
    const text = textIn(bytes);
    const { title, purpose, note, parts } = onPaper.scope;
    for (const said of [
      onPaper.name,
      onPaper.issuer,
      title[language],
      purpose[language],
      note[language],
      dayOnPaper('2033-05-01', language),
      ...parts.map((part) => part.evidences[language]),
      '2 · 1/1',
    ]) {
      expect(text).toContain(flat(said));
    }
    expect(pagesOf(bytes)).toBe(1);
    expect(bytes.toString('latin1')).toContain(`/Lang (${language})`);
  });

  test('the card has the size of a card, and says the same in short', async () => {
    const bytes = await cardPdf(onPaper, language, 'letter');
    const text = textIn(bytes);
    for (const said of [onPaper.name, onPaper.scope.title[language], onPaper.issuer]) {
      expect(text).toContain(said);
    }
    expect(text).toContain(dayOnPaper('2033-05-01', language));
    expect(pagesOf(bytes)).toBe(1);
    // ISO/IEC 7810 ID-1, both sides: 2 x 85.60 mm by 53.98 mm, in points.
    expect(streamsOf(bytes).join('')).toMatch(/485\.29\d* 153\.01\d* re/);
  });

  test.each(['letter', 'a4'] as const)('every scheme fits one sheet of %s', async (size) => {
    for (const scheme of content.schemes.values()) {
      const scope = scopeOf(scheme, content.methods);
      const passed = scope.parts.map(({ id }) => ({ part: id, on: certified.grantedOn }));
      const long = { ...onPaper, scope, passed, name: 'María de los Ángeles Hernández Villaseñor' };
      for (const bytes of [
        await certificatePdf(long, language, size),
        await cardPdf(long, language, size),
      ]) {
        expect(pagesOf(bytes)).toBe(1);
      }
    }
  });
});

test('the same certificate is the same file to the last byte', async () => {
  const once = () => certificatePdf(onPaper, 'en', 'letter');
  expect((await once()).equals(await once())).toBe(true);
});

test('both are black and white', async () => {
  for (const make of [certificatePdf, cardPdf]) {
    const drawn = streamsOf(await make(onPaper, 'en', 'letter')).join('\n');
    const colours = [...drawn.matchAll(/([\d.]+ [\d.]+ [\d.]+) (?:scn|SCN|rg|RG)/g)];
    expect(colours.length).toBeGreaterThan(0);
    expect(new Set(colours.map(([, colour]) => colour))).toEqual(new Set(['0 0 0']));
  }
});

test('of an invented company it says that it certifies nobody', async () => {
  for (const make of [certificatePdf, cardPdf]) {
    const text = textIn(await make({ ...onPaper, isDemo: true }, 'en', 'letter'));
    expect(text).toContain('THIS CERTIFIES NOBODY');
  }
});

test.each([
  ['Łukasz Ðorđe', 'Lukasz Ðorde'],
  ['Ngô Bảo Châu', 'Ngô Bao Châu'],
  ['Ana María Ruiz', 'Ana María Ruiz'],
  ['王伟', '??'],
])('%s stands on paper as %s', (name, seen) => {
  expect(nameOnPaper(name)).toBe(seen);
});
