import { describe, expect, test } from 'vitest';
import { catalogueOf } from '#engine/compile/catalogue.ts';
import { methodBundle } from '#engine/compile/method-bundle.ts';
import { openContent } from '#server/content.ts';
import { soundFolder } from '../../content/fixtures.ts';

const content = openContent(soundFolder);

describe('truth', () => {
  test('a bundle holds the method, its data sheet, its hazards and what they cite', () => {
    const bundle = methodBundle(content, 'tiny-wall');
    expect(bundle?.dataSheet.id).toBe('tiny');
    expect([...(bundle?.hazards.keys() ?? [])]).toEqual(['vapour']);
    expect([...(bundle?.sources.keys() ?? [])].sort()).toEqual(['a-standard', 'common-practice']);
  });

  test('a bundle names the revision of all content and that of its data sheet', () => {
    const bundle = methodBundle(content, 'tiny-wall');
    expect(bundle?.revision).toBe(content.revision);
    expect(bundle?.sheetRevision).toMatch(/^[0-9a-f]{16}$/);
    expect(bundle?.sheetRevision).not.toBe(content.revision);
  });

  test('there is no bundle of a method that is not there', () => {
    expect(methodBundle(content, 'no-such-wall')).toBeUndefined();
    expect(methodBundle(content, '__proto__')).toBeUndefined();
  });

  test('the catalogue lists each method with its questions and the number of its steps', () => {
    const { revision, methods } = catalogueOf(content);
    expect(revision).toBe(content.revision);
    expect(methods.map(({ id, steps, site }) => [id, steps, site.map((one) => one.id)])).toEqual([
      ['tiny-wall', 3, ['edge', 'weather']],
    ]);
  });
});
