import { describe, expect, test } from 'vitest';
import fc from 'fast-check';
import type { IsoDate } from '#engine/calendar.ts';
import { fadedTopics, leaningTo } from '#engine/exam/leaning.ts';
import type { Blueprint } from '#engine/exam/scheme.ts';
import type { KeyPoint } from '#engine/tracing/key-point.ts';
import type { PersonPoints } from '#engine/tracing/points-of.ts';
import { content } from '../../content/walls.ts';

const today = '2030-05-01' as IsoDate;
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

  test('what is expected to be gone of a topic is what was not shown, and what time took', () => {
    const topic = content.topics
      .values()
      .find(({ questions }) => questions.some(({ of }) => of.length > 0))!;
    const { method, step } = topic.questions.flatMap(({ of }) => of)[0]!;
    const seenOn = (lastSeen: string | undefined, probability = 1) =>
      fadedTopics([topic], person([{ method, step, lastSeen, probability }]), today).get(topic.id);
    expect(seenOn(today)).toBe(0);
    expect(seenOn(today, 0.6)).toBeCloseTo(0.4, 12);
    // After a half-life of 6.5 months, 197.8 days, half of it is left.
    expect(seenOn('2029-10-15')).toBeCloseTo(0.5, 2);
    expect(seenOn(undefined)).toBeUndefined();
  });
});

function person(
  points: readonly (Pick<KeyPoint, 'method' | 'step'> & {
    readonly lastSeen: string | undefined;
    readonly probability: number;
  })[],
): Pick<PersonPoints, 'methods'> {
  const seen = points.map(({ method, step, lastSeen, probability }) => ({
    point: { method, step },
    lastSeen,
    probability,
  }));
  return { methods: [{ points: seen }] } as unknown as Pick<PersonPoints, 'methods'>;
}

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
