import { describe, expect, test } from 'vitest';
import fc from 'fast-check';
import { leaningTo } from '#engine/exam/leaning.ts';
import type { Blueprint } from '#engine/exam/scheme.ts';
import { content } from '../../content/walls.ts';

const blueprint: Blueprint = new Map([
  ['base-of-wall', 5],
  ['weather-and-waiting', 4],
  ['safety', 3],
  ['faults-and-rework', 3],
]);
const bank = new Map(
  [...content.topics].map(([id, { questions }]) => [id as string, questions.length]),
);
const plenty = new Map([...blueprint.keys()].map((topic) => [topic, 100]));
const sum = (asked: Blueprint) => [...asked.values()].reduce((total, count) => total + count, 0);

describe('truth', () => {
  test('by hand: two of three free questions go where twice as much is gone', () => {
    // Kept 2 + 2 of 3 + 3; of the two free ones weights 1 x 0.8 and 1 x 0.2: 0.8, then 0.8/3 > 0.2.
    const of: Blueprint = new Map([
      ['a', 3],
      ['b', 3],
    ]);
    const faded = new Map([
      ['a', 0.8],
      ['b', 0.2],
    ]);
    const available = new Map([
      ['a', 9],
      ['b', 9],
    ]);
    expect([...leaningTo(of, faded, available)]).toEqual([
      ['a', 4],
      ['b', 2],
    ]);
    expect(leaningTo(of, faded, new Map([...available, ['a', 3]])).get('a')).toBe(3);
  });

  test('two people who let other things fade are asked other forms', () => {
    const [one, other] = ['base-of-wall', 'faults-and-rework'].map((gone) =>
      leaningTo(
        blueprint,
        new Map([...blueprint.keys()].map((id) => [id, id === gone ? 0.9 : 0.1])),
        bank,
      ),
    );
    expect(one!.get('base-of-wall')).toBeGreaterThan(other!.get('base-of-wall')!);
    expect(other!.get('faults-and-rework')).toBeGreaterThan(one!.get('faults-and-rework')!);
  });
});

const share = fc.double({ min: 0, max: 1, noNaN: true });
const shares = fc
  .array(fc.tuple(fc.constantFrom(...blueprint.keys()), share))
  .map((entries) => new Map(entries));

describe('laws', () => {
  test('a form stays as long, asks half of every topic, and no more than there is', () => {
    fc.assert(
      fc.property(shares, (faded) => {
        const asked = leaningTo(blueprint, faded, bank);
        expect(sum(asked)).toBe(sum(blueprint));
        for (const [topic, count] of blueprint) {
          expect(asked.get(topic)).toBeGreaterThanOrEqual(Math.ceil(count / 2));
          expect(asked.get(topic)).toBeLessThanOrEqual(bank.get(topic)!);
        }
      }),
    );
  });

  test('where all has faded alike, or nothing is known, it is the blueprint itself', () => {
    fc.assert(
      fc.property(share, (share) => {
        const alike = new Map([...blueprint.keys()].map((id) => [id, share]));
        expect([...leaningTo(blueprint, alike, plenty)]).toEqual([...blueprint]);
      }),
    );
    expect(leaningTo(blueprint, new Map(), plenty)).toBe(blueprint);
  });

  test('what has faded more is never asked less for it', () => {
    fc.assert(
      fc.property(shares, fc.constantFrom(...blueprint.keys()), (faded, topic) => {
        const usual = [...blueprint.keys()].map((id) => [id, 0.5] as const);
        const before = new Map([...usual, ...faded]);
        const after = new Map(before).set(topic, 1);
        expect(leaningTo(blueprint, after, plenty).get(topic)).toBeGreaterThanOrEqual(
          leaningTo(blueprint, before, plenty).get(topic)!,
        );
      }),
    );
  });
});
