import { describe, expect, test } from 'vitest';
import { answersOf } from '#engine/simulation/answers-of.ts';
import type { Learner } from '#engine/simulation/learner.ts';
import { instanceOf, type Instance } from '#engine/takeoff/instance.ts';
import { markAnswers } from '#engine/takeoff/marks.ts';
import { content, takeoff } from '../takeoff/shipped.ts';

const usual: Learner = { ability: 0, learning: 0.3, practised: 0 };
const families = [...content.takeoffs.keys()].map((id) => takeoff(id));
const seeds = [...Array(20).keys()];

function made(family: (typeof families)[number], seed: number): Instance {
  const instance = instanceOf(family, seed);
  if (!instance.ok) throw new Error(instance.error.code);
  return instance.value;
}

const marksOf = (learner: Learner) =>
  families.flatMap((family) =>
    seeds.flatMap((seed) => {
      const instance = made(family, seed);
      return markAnswers(instance, answersOf(instance, learner, seed));
    }),
  );

describe('laws', () => {
  test('one who makes no mistakes answers every part of every family right', () => {
    const verdicts = marksOf({ ...usual, ability: Infinity }).map(({ verdict }) => verdict?.kind);
    expect(new Set(verdicts)).toEqual(new Set(['right']));
  });

  test('one who makes nothing else goes wrong by a named slip wherever the part has one', () => {
    const missed = marksOf({ ...usual, ability: -Infinity }).filter(
      ({ solved, verdict }) =>
        solved.slips.length > 0 && verdict?.kind !== 'slip' && !verdict?.followed,
    );
    expect(missed.map(({ part, verdict, reading }) => [part, verdict?.kind, reading])).toEqual([]);
  });

  test('abler people get more right', () => {
    const credits = [-1, 0, 1, 2].map((ability) => {
      const marks = marksOf({ ...usual, ability });
      return marks.reduce((sum, { credit }) => sum + credit, 0) / marks.length;
    });
    for (const [at, credit] of credits.slice(1).entries()) {
      expect(credit).toBeGreaterThan(credits[at]! + 0.05);
    }
  });

  test('the same seed writes the same', () => {
    const instance = made(families[0]!, 1);
    expect(answersOf(instance, usual, 7)).toEqual(answersOf(made(families[0]!, 1), usual, 7));
  });
});
