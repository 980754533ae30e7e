import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { spotKey, spotNamed } from '#engine/tally/spot.ts';
import type { Trouble } from '#engine/tally/where-it-goes-wrong.ts';
import { wallToDraw } from '#ui/insight/drawn-wall.ts';
import { listedTroubles } from '#ui/insight/listed-troubles.ts';
import { shareWords } from '#ui/insight/share-words.ts';
import { askWords, stepAddress, troubleWords } from '#ui/insight/trouble-words.ts';
import { tinyBundle } from '../tiny-content.ts';

const { method } = tinyBundle;
const plain = { edge: 'plain', weather: 'normal' };
const idOf = (place: number) => method.steps[place]!.id;
const spot = (name: string) => spotNamed(`tiny-wall/${name}`, method)!;

const trouble = (name: string, wrong: number, judged = 12): Trouble => ({
  spot: spot(name),
  judged,
  wrong,
  persons: [],
  rate: { low: 0, high: 1 },
  isTooFew: judged < 10,
});

const listed = (...troubles: readonly Trouble[]) => {
  const { sure, few } = listedTroubles(troubles);
  const names = (some: readonly Trouble[]) =>
    some.map((one) => spotKey(one.spot).replace('tiny-wall/', ''));
  return { sure: names(sure), few: names(few) };
};

describe('truth', () => {
  test.each([
    [0, 'never'],
    [0.02, '1 in 50'],
    [0.2, '1 in 5'],
    [0.26, '1 in 4'],
    [0.34, '1 in 3'],
    [0.5, '1 in 2'],
    [0.66, '2 in 3'],
    [0.79, '4 in 5'],
    [0.96, '19 in 20'],
    [1, 'always'],
  ])('%f is said as %s', (share, words) => {
    expect(shareWords(share)).toBe(words);
  });

  test('each kind of trouble has its words', () => {
    const words = (name: string) => troubleWords(method, spot(name));
    expect(words('order/set-edge/hang')).toBe(
      '“Set the edge” was not done before “Hang the sheet”',
    );
    expect(words('wait/prime')).toBe('The wait after “Prime” was cut short');
    expect(words('setting/hang/turn-up')).toBe('“Hang the sheet”: a value out of tolerance');
    expect(words('step/prime')).toContain('“Prime”: left out');
    expect(askWords(method, spot('setting/hang/turn-up'))).toBe(
      method.steps[2]!.settings[0]!.ask.en,
    );
    expect(askWords(method, spot('step/prime'))).toBeUndefined();
  });

  test('a step leads to its place on a wall that has it', () => {
    expect(stepAddress(method, plain, idOf(0))).toMatch(
      /^\/methods\/tiny-wall\?.*edge=plain.*#prime$/,
    );
    expect(stepAddress(method, plain, idOf(1))).toMatch(/edge=drip.*#set-edge$/);
  });

  test('the wall that is drawn has the steps that were judged', () => {
    expect(wallToDraw(method, [trouble('step/set-edge', 1)])['edge']).toBe('drip');
    expect(wallToDraw(method, [])).toEqual(wallToDraw(method, [trouble('step/prime', 1)]));
  });

  test('a step says nothing that one of its parts says more exactly', () => {
    expect(listed(trouble('step/hang', 4), trouble('setting/hang/turn-up', 4))).toEqual({
      sure: ['setting/hang/turn-up'],
      few: [],
    });
    expect(listed(trouble('step/hang', 5), trouble('setting/hang/turn-up', 4)).sure).toEqual([
      'step/hang',
      'setting/hang/turn-up',
    ]);
  });

  test('what never went wrong is not listed, and what too few showed stands apart', () => {
    expect(listed(trouble('step/prime', 0), trouble('wait/prime', 2, 3))).toEqual({
      sure: [],
      few: ['wait/prime'],
    });
  });
});

describe('laws', () => {
  test('words for a share are near it', () => {
    const value = (words: string) => {
      const [some, of] = (/(\d+) in (\d+)/.exec(words) ?? []).slice(1).map(Number);
      return words === 'never' ? 0 : words === 'always' ? 1 : some! / of!;
    };
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (share) => {
        expect(Math.abs(value(shareWords(share)) - share)).toBeLessThanOrEqual(0.051);
      }),
    );
  });
});
