import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { languages } from '#engine/text.ts';
import { isKeptPage } from '#ui/offline/kept-pages.ts';
import { manifestIn } from '#ui/offline/manifest.ts';

const fileAt = (address: string) => readFileSync(`static${address}`);

/** Width and height as a PNG states them: ISO/IEC 15948, 11.2.2. */
const sizeOf = (png: Buffer) => `${png.readUInt32BE(16)}x${png.readUInt32BE(20)}`;

const paperOf = (scheme: 'light' | 'dark') => {
  const styles = readFileSync('src/ui/sheet/tokens.css', 'utf8');
  const block = styles.slice(styles.indexOf(`color-scheme: ${scheme};`));
  return /--paper: (#\w+);/.exec(block)?.[1];
};

describe('truth', () => {
  test.each(languages)('the manifest in %s has what installing asks for', (language) => {
    const manifest = manifestIn(language);
    expect(manifest.lang).toBe(language);
    expect(manifest.display).toBe('standalone');
    const purposes = manifest.icons.map(({ purpose }) => purpose);
    expect(purposes).toContain('maskable');
    expect(manifest.icons.map(({ sizes }) => sizes)).toEqual(
      expect.arrayContaining(['192x192', '512x512', 'any']),
    );
  });

  test.each(manifestIn('en').icons.map((icon) => [icon.src, icon] as const))(
    '%s is there, in the size and form that are said',
    (_, { src, sizes, type }) => {
      const file = fileAt(src);
      if (type === 'image/png') expect(sizeOf(file)).toBe(sizes);
      else expect(file.toString()).toMatch(/^<svg /);
    },
  );

  test('its words are those of its language, and both are one app', () => {
    const [en, es] = [manifestIn('en'), manifestIn('es')];
    expect(en.description).not.toBe(es.description);
    expect(en.shortcuts[0]?.name).toBe('Practise');
    expect(es.shortcuts[0]?.name).toBe('Práctica');
    expect(en.id).toBe(es.id);
  });

  test('every shortcut leads to a page that opens without signal', () => {
    for (const { url } of manifestIn('en').shortcuts) expect(isKeptPage(url)).toBe(true);
  });

  test('the bars of the browser have the colour of the paper', () => {
    const page = readFileSync('src/app.html', 'utf8');
    const colours = [...page.matchAll(/data-of="(\w+)"[^>]*content="(#\w+)"/g)];
    expect(colours.map(([, scheme, colour]) => [scheme, colour])).toEqual([
      ['light', paperOf('light')],
      ['dark', paperOf('dark')],
    ]);
    expect(manifestIn('en').theme_color).toBe(paperOf('light'));
  });
});
