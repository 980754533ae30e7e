import { describe, expect, it, test } from 'vitest';
import { storeIn } from '#ui/attempts/browser-store.ts';

const shut = () =>
  storeIn(() => {
    throw new DOMException('Storage is off.', 'SecurityError');
  });

const full = () => {
  const kept = new Map([['old', '1']]);
  return storeIn(() => ({
    getItem: (name) => kept.get(name) ?? null,
    setItem: () => {
      throw new DOMException('No room.', 'QuotaExceededError');
    },
    removeItem: (name) => kept.delete(name),
    key: (place) => [...kept.keys()][place] ?? null,
    length: kept.size,
  }));
};

describe('truth', () => {
  test('what is written is read again, and by another store of the same browser', () => {
    localStorage.clear();
    expect(storeIn(() => localStorage).write('a/1', { b: [2] })).toBe(true);
    const store = storeIn(() => localStorage);
    expect(store.read('a/1')).toEqual({ b: [2] });
    expect(store.names('a/')).toEqual(['a/1']);
    store.remove('a/1');
    expect(store.read('a/1')).toBeUndefined();
  });

  test('what is no JSON counts as nothing', () => {
    localStorage.setItem('a/2', '{');
    expect(storeIn(() => localStorage).read('a/2')).toBeUndefined();
  });
});

describe('laws', () => {
  it.each([
    ['off', shut],
    ['full', full],
  ])('a storage that is %s says so, and keeps until the page is left', (_, make) => {
    const store = make();
    expect(store.write('a/1', 7)).toBe(false);
    expect(store.read('a/1')).toBe(7);
    expect(store.names('a/')).toEqual(['a/1']);
    store.remove('a/1');
    expect(store.read('a/1')).toBeUndefined();
    expect(store.names('a/')).toEqual([]);
  });

  it('a full storage still reads what is in it', () => {
    expect(full().read('old')).toBe(1);
  });
});
