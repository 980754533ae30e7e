import { describe, expect, test } from 'vitest';
import { editionOn, isSame, shelfOf } from '#ui/offline/edition.ts';
import { askFrom, standingFrom } from '#ui/offline/post.ts';

const edition = { build: '1764', revision: 'a1' };

describe('laws', () => {
  test('a shelf is named so that its edition can be read from the name', () => {
    for (const one of [edition, { build: '0.1.0/rc 2', revision: 'á%' }]) {
      expect(editionOn(shelfOf(one))).toEqual(one);
    }
  });

  test('shelves of others hold no edition', () => {
    for (const name of ['', 'underlap/used', 'underlap/edition/1', 'else/edition/1/2', 'a/b/c/d']) {
      expect(editionOn(name)).toBeUndefined();
    }
  });
});

describe('truth', () => {
  test('editions are the same by build and revision', () => {
    expect(isSame(edition, { ...edition })).toBe(true);
    expect(isSame(edition, { ...edition, build: '1765' })).toBe(false);
    expect(isSame(edition, { ...edition, revision: 'b2' })).toBe(false);
    expect(isSame(edition, undefined)).toBe(false);
  });

  test('what is asked arrives as it was posted', () => {
    for (const ask of [{ ask: 'standing' }, { ask: 'look' }, { ask: 'use', edition }]) {
      expect(askFrom(structuredClone(ask))).toEqual(ask);
    }
    for (const standing of [
      { used: edition, ready: undefined },
      { used: undefined, ready: undefined },
      { used: edition, ready: { build: '1765', revision: 'a1' } },
    ]) {
      expect(standingFrom(structuredClone(standing))).toEqual(standing);
    }
  });

  test('what others post is not taken for ours', () => {
    for (const data of [undefined, null, 'use', { ask: 'use' }, { ask: 'use', edition: {} }]) {
      expect(askFrom(data)).toBeUndefined();
    }
    for (const data of [undefined, {}, { used: edition }, { used: 1, ready: undefined }]) {
      expect(standingFrom(data)).toBeUndefined();
    }
  });
});
