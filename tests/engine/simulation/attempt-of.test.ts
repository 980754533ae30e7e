import { describe, expect, test } from 'vitest';
import type { AttemptFile } from '#engine/marking/attempt-file.ts';
import { attemptFrom } from '#engine/marking/attempt-from.ts';
import { deviationKinds } from '#engine/marking/deviation.ts';
import { review, type Review } from '#engine/marking/review.ts';
import { attemptOf } from '#engine/simulation/attempt-of.ts';
import { chanceOf, mistakeKinds, type Learner } from '#engine/simulation/learner.ts';
import { content, walls } from '../../content/walls.ts';

const usual: Learner = { ability: 0, learning: 0.3, practised: 0 };
const faultless: Learner = { ...usual, ability: Infinity };

function marked(file: AttemptFile): Review {
  const attempt = attemptFrom(file, content);
  if (!attempt.ok) throw new Error(attempt.error.map(({ message }) => message).join(' '));
  return review(attempt.value);
}

/** Spread over all methods, and over their walls. */
const few = walls.filter((_, at) => at % 24 === 7);

const seeds = 200;
const scoresOf = (learner: Learner): readonly number[] =>
  Array.from(
    { length: seeds },
    (_, seed) => marked(attemptOf(few[seed % few.length]!.sequence, learner, seed)).score,
  );
const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

describe('laws', () => {
  test.each(walls)(
    'one who makes no mistakes is accepted with a full score: $name',
    ({ sequence }) => {
      for (const seed of [1, 2, 3]) {
        const { score, outcome, items } = marked(attemptOf(sequence, faultless, seed));
        expect([score, outcome, items]).toEqual([100, 'accept', []]);
      }
    },
  );

  test('the same seed plays the same cards, another one others', () => {
    for (const { sequence } of few) {
      const one = attemptOf(sequence, usual, 'a');
      expect(attemptOf({ ...sequence }, { ...usual }, 'a')).toEqual(one);
      expect(attemptOf(sequence, usual, 'b')).not.toEqual(one);
    }
  });

  test('abler people score higher on average, and so does who has practised more', () => {
    // Seeded, so these means never move; they lie many points apart.
    const means = [-1, 0, 1, 2].map((ability) => meanOf(scoresOf({ ...usual, ability })));
    for (const [at, mean] of means.slice(1).entries()) expect(mean).toBeGreaterThan(means[at]! + 2);
    const practised = [0, 3, 6].map((times) => meanOf(scoresOf({ ...usual, practised: times })));
    expect(practised[1]).toBeGreaterThan(practised[0]! + 2);
    expect(practised[2]).toBeGreaterThan(practised[1]! + 2);
  });

  test('every attempt passes the door for attempts, and every kind of mistake happens', () => {
    const kinds = new Set(
      Array.from({ length: seeds }, (_, seed) =>
        marked(attemptOf(few[seed % few.length]!.sequence, { ...usual, ability: -1 }, seed)),
      ).flatMap(({ items }) => items.map(({ kind }) => kind)),
    );
    expect([...kinds].sort()).toEqual(
      deviationKinds.filter((kind) => kind !== 'done-again').toSorted(),
    );
  });
});

describe('truth', () => {
  test('a chance falls with ability and with practice, by the same logits for both', () => {
    for (const kind of mistakeKinds) {
      const at = (changed: Partial<Learner>) => chanceOf({ ...usual, ...changed }, kind, 'hang');
      expect(at({ ability: 1 })).toBeLessThan(at({}));
      expect(at({ practised: 10 })).toBe(at({ ability: 3 }));
      expect(at({ ability: Infinity })).toBe(0);
      expect(at({ ability: -Infinity })).toBe(10_000);
    }
  });

  test('some points of a kind are harder than others, the same ones for everybody', () => {
    const hardness = (ability: number) =>
      ['prime', 'hang', 'roll', 'tape'].toSorted(
        (a, b) =>
          chanceOf({ ...usual, ability }, 'off', a) - chanceOf({ ...usual, ability }, 'off', b),
      );
    expect(hardness(0)).toEqual(hardness(1));
    expect(chanceOf(usual, 'off', hardness(0)[0]!)).toBeLessThan(
      chanceOf(usual, 'off', hardness(0)[3]!),
    );
  });
});
