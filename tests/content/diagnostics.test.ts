import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compile } from '#engine/compile/compile.ts';
import { diagnosticCodes } from '#engine/compile/diagnostic.ts';
import { contentFolder, readContentFiles } from '#server/content.ts';
import { brokenCases, soundFolder } from './fixtures.ts';

const cases = brokenCases();

describe('truth', () => {
  it('the sound content has no fault', () => {
    expect(compile(readContentFiles(soundFolder)).diagnostics).toEqual([]);
  });

  it('the shipped content has no fault', () => {
    expect(compile(readContentFiles(contentFolder())).diagnostics).toEqual([]);
  });

  it.each(cases)('$name has the one fault that it announces, at its place', (broken) => {
    const { diagnostics } = compile(broken.files);
    const found = diagnostics.map(({ code, file, line, column, length }) => ({
      code,
      file,
      line,
      column,
      length,
    }));
    expect(found).toEqual(broken.announced);
    expect(found.map(({ code }) => code)).toEqual([broken.code]);
  });

  it.each(cases)(
    '$name shows the line as it stands, and says what and how to mend it',
    (broken) => {
      for (const { file, line, sourceLine, message, cure } of compile(broken.files).diagnostics) {
        const text = broken.files.find(({ path }) => path === file)?.text ?? '';
        expect(sourceLine).toBe(text.split('\n')[line - 1]);
        expect(message).toMatch(/\S/);
        expect(cure).toMatch(/^[A-Z].*\.$/);
      }
    },
  );

  it('every code has a broken file', () => {
    const shown = new Set(cases.map(({ code }) => code));
    expect([...shown].toSorted()).toEqual([...diagnosticCodes].toSorted());
  });

  it('every code has a row in the description of content, and no other has', () => {
    const page = readFileSync(new URL('../../content/README.md', import.meta.url), 'utf8');
    const rows = page.slice(page.indexOf('## Diagnostics')).matchAll(/^\| `([A-Z_]+)` +\|/gm);
    expect([...rows].map((row) => row[1])).toEqual([...diagnosticCodes]);
  });
});
