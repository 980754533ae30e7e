import { describe, expect, it, test } from 'vitest';
import type { Part } from '#engine/method/part-of.ts';
import { allSites } from '#engine/method/site.ts';
import { anyWallAddress } from '#ui/mockup/fresh-wall.ts';
import { addressOf, mended, type WallAddress, wallFrom } from '#ui/mockup/wall-address.ts';
import { tinyBundle } from '../tiny-content.ts';

const { method } = tinyBundle;
const read = (asked: string) => wallFrom(method, new URLSearchParams(asked));
const faultsOf = (asked: string) => {
  const wall = read(asked);
  return wall.ok ? [] : wall.error.map(({ name, nearest }) => [name, nearest]);
};

describe('truth', () => {
  test('an address without answers is the usual wall, guided', () => {
    expect(read('')).toEqual({
      ok: true,
      value: {
        method: 'tiny-wall',
        site: { edge: 'plain', weather: 'normal' },
        mode: 'guided',
        seed: '1',
      },
    });
  });

  test('a stretch is named by its first and its last step', () => {
    const wall = read('part=prime..hang');
    expect(wall.ok && wall.value.part).toEqual(['prime', 'hang']);
  });

  test.each([
    ['edge=dripp', 'edge', 'drip'],
    ['egde=drip', 'egde', 'edge'],
    ['mode=guide', 'mode', 'guided'],
    ['seed=x', 'seed', '1'],
    ['seed=12345678901', 'seed', '1'],
    ['part=prime', 'part', 'prime..hang'],
    ['part=prime..paint', 'part', 'prime..hang'],
  ])('%s is refused, and the nearest right choice named', (asked, name, nearest) => {
    expect(faultsOf(asked)).toEqual([[name, nearest]]);
  });

  test('every fault of an address is told at once, and all are mended together', () => {
    const asked = new URLSearchParams('edge=dripp&mode=owl&seed=7');
    const wall = wallFrom(method, asked);
    expect(!wall.ok && wall.error.length).toBe(2);
    expect(!wall.ok && mended(asked, wall.error)).toBe('?edge=drip&mode=own&seed=7');
  });

  test('a question that was misspelt keeps its answer when it is mended', () => {
    const asked = new URLSearchParams('egde=drip');
    const wall = wallFrom(method, asked);
    expect(!wall.ok && mended(asked, wall.error)).toBe('?edge=drip');
  });
});

describe('laws', () => {
  it('a wall is read from its address as it was', () => {
    for (const site of allSites(method.site)) {
      for (const part of [undefined, ['prime', 'hang'] as unknown as Part]) {
        const wall: WallAddress = {
          method: method.id,
          site,
          mode: 'own',
          seed: '12',
          ...(part && { part }),
        };
        const [path, asked] = addressOf(wall).split('?');
        expect(path).toBe('/practise/tiny-wall');
        expect(read(asked!)).toEqual({ ok: true, value: wall });
      }
    }
  });

  it('any wall of a seed is the same wall, and one that the method knows', () => {
    const address = anyWallAddress(method, 'own', '17');
    expect(anyWallAddress(method, 'own', '17')).toBe(address);
    expect(read(address.split('?')[1]!).ok).toBe(true);
  });
});
