import { beforeEach, describe, expect, it, test } from 'vitest';
import { browserStore } from '#ui/attempts/browser-store.ts';
import {
  allUnfinished,
  dropUnfinished,
  findUnfinished,
  keepUnfinished,
  type Unfinished,
} from '#ui/mockup/unfinished.ts';

const work = (seed: number, more: Partial<Unfinished> = {}): Unfinished => ({
  address: `/practise/tiny-wall?seed=${seed}`,
  title: { en: 'A tiny wall', es: 'Un muro chico' },
  at: new Date(2030, 0, 1, 0, seed).toISOString(),
  moves: [{ card: 'prime', settings: {} }, { wait: 5 }],
  helped: [{ help: 'reason', card: 'hang' }],
  ...more,
});

const keep = (...works: readonly Unfinished[]) =>
  works.map((one) => keepUnfinished(browserStore, one));
const seeds = () => allUnfinished(browserStore).map(({ address }) => Number(address.split('=')[1]));

beforeEach(() => localStorage.clear());

describe('truth', () => {
  test('a wall is found again at its address, as it was left', () => {
    keep(work(1));
    expect(findUnfinished(browserStore, work(1).address)).toEqual(work(1));
    expect(findUnfinished(browserStore, work(2).address)).toBeUndefined();
    dropUnfinished(browserStore, work(1).address);
    expect(findUnfinished(browserStore, work(1).address)).toBeUndefined();
  });

  test('those under way are listed, the latest first; empty and inspected walls are not', () => {
    keep(work(1), work(3), work(2), work(4, { moves: [] }), work(5, { attempt: 'a1' }));
    expect(seeds()).toEqual([3, 2, 1]);
  });

  test.each([
    ['moves that are no list', { ...work(1), moves: 'all' }],
    ['a wait that goes back', { ...work(1), moves: [{ wait: -5 }] }],
    ['a card without settings', { ...work(1), moves: [{ card: 'prime' }] }],
    ['help without a card', { ...work(1), helped: [{ help: 'reason' }] }],
    ['no title', { ...work(1), title: undefined }],
    ['no object', 7],
  ])('%s is not gone on with', (_, found) => {
    localStorage.setItem(`mockup/${work(1).address}`, JSON.stringify(found));
    expect(findUnfinished(browserStore, work(1).address)).toBeUndefined();
    expect(seeds()).toEqual([]);
  });
});

describe('laws', () => {
  it('never keeps more than a browser has room for, and lets go of the oldest', () => {
    keep(...Array.from({ length: 60 }, (_, seed) => work(seed)));
    expect(seeds().length).toBeLessThanOrEqual(31);
    expect(seeds().slice(0, 3)).toEqual([59, 58, 57]);
  });
});
