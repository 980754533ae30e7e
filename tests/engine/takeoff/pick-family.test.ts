import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { randomFrom } from '#engine/random.ts';
import type { KeptProblem } from '#engine/takeoff/kept-problem.ts';
import { chancesOf, lately, lookBack, pickFamily } from '#engine/takeoff/pick-family.ts';

let count = 0;

/** A problem with one answer for each credit, the earliest first. */
const kept = (family: string, at: string, ...credits: readonly number[]): KeptProblem => ({
  id: String((count += 1)),
  at,
  family,
  seed: '1',
  form: 'entry',
  revision: 'r',
  sheetRevision: 's',
  answers: credits.map((credit, place) => ({
    part: String(place),
    tries: [{ text: '1' }],
    verdict: credit === 1 ? 'right' : credit === 0.5 ? 'badly-rounded' : 'wrong',
    slips: [],
    followed: false,
    credit,
    shown: false,
    closed: true,
  })),
});

describe('truth', () => {
  it.each([
    ['never tried', [], 4],
    ['all right', [1, 1, 1, 1, 1], 1],
    ['one missed', [1, 0, 1, 1, 1], 3],
    ['one half right', [1, 0.5, 1], 2],
    ['all missed', [0, 0, 0, 0, 0], 11],
  ])('a family %s has its chances', (_, credits, chances) => {
    const history = credits.length > 0 ? [kept('a', '2030-01-01T00:00:00Z', ...credits)] : [];
    expect(chancesOf(history, 'a')).toBe(chances);
  });

  it('only the last answers count, the latest first', () => {
    const history = [
      kept('a', '2030-01-02T00:00:00Z', 1, 1, 1),
      kept('b', '2030-01-03T00:00:00Z', 0),
      kept('a', '2030-01-01T00:00:00Z', 0, 0, 0.5, 0),
    ];
    expect(lately(history, 'a').map(({ credit }) => credit)).toEqual([1, 1, 1, 0, 0.5]);
    expect(lately(history, 'a')).toHaveLength(lookBack);
  });

  it('none comes twice in a row, unless there is no other', () => {
    const random = randomFrom('twice');
    const next = Array.from({ length: 200 }, () => pickFamily(random, ['a', 'b', 'c'], [], 'b'));
    expect(next).not.toContain('b');
    expect(pickFamily(random, ['b'], [], 'b')).toBe('b');
  });

  it('nothing to pick from is refused', () => {
    expect(() => pickFamily(randomFrom('none'), [], [])).toThrow(RangeError);
  });
});

describe('laws', () => {
  it('every family keeps a chance, and a miss never lowers it', () => {
    const credits = fc.array(fc.constantFrom(0, 0.5, 1), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(credits, fc.nat(4), (some, place) => {
        const missed = some.map((credit, at) => (at === place % some.length ? 0 : credit));
        const at = '2030-01-01T00:00:00Z';
        const before = chancesOf([kept('a', at, ...some)], 'a');
        const after = chancesOf([kept('a', at, ...missed)], 'a');
        expect(before).toBeGreaterThanOrEqual(1);
        expect(after).toBeGreaterThanOrEqual(before);
      }),
    );
  });

  it('families come in proportion to their chances', () => {
    const history = [
      kept('missed', '2030-01-01T00:00:00Z', 0, 0, 0, 0, 0),
      kept('known', '2030-01-01T00:00:00Z', 1),
    ];
    const random = randomFrom('proportion');
    const draws = 6000;
    const times = { missed: 0, known: 0, fresh: 0 };
    for (let draw = 0; draw < draws; draw += 1) {
      const family = pickFamily(random, ['missed', 'known', 'fresh'], history);
      times[family as keyof typeof times] += 1;
    }
    // 11, 1 and 4 of 16; three standard deviations are 0.02 or less.
    expect(times.missed / draws).toBeCloseTo(11 / 16, 1);
    expect(Math.abs(times.known / draws - 1 / 16)).toBeLessThan(0.02);
    expect(Math.abs(times.fresh / draws - 4 / 16)).toBeLessThan(0.02);
  });
});
