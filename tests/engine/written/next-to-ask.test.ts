import { describe, expect, it } from 'vitest';
import { keyPointsOf } from '#engine/tracing/key-point.ts';
import { keyPointStates } from '#engine/tracing/key-point-states.ts';
import { leastSureFirst, surenessOf } from '#engine/written/least-sure.ts';
import { nextToAsk } from '#engine/written/next-to-ask.ts';
import type { Question, QuestionId } from '#engine/written/question.ts';
import { built, tinyMethod } from '../tracing/built.ts';

const asking = (id: string, ...steps: readonly string[]): Pick<Question, 'id' | 'of'> => ({
  id: id as QuestionId,
  of: steps.map((step) => ({ method: tinyMethod.id, step: step as never })),
});

const [plain, ofPrime, ofHang, ofBoth] = [
  asking('plain'),
  asking('of-prime', 'prime'),
  asking('of-hang', 'hang'),
  asking('of-both', 'prime', 'hang'),
] as const;
const questions = [plain, ofPrime, ofHang, ofBoth];

/** Hung too low three times, and all else right. */
const low = built(['prime@0', 'set-edge@0', 'hang@500 | turn-up=1 in']);
const states = keyPointStates(keyPointsOf(tinyMethod), [low, low, low]);

const names = (all: readonly Pick<Question, 'id'>[]) => all.map(({ id }) => id as string);
const next = (...given: readonly [string, boolean][]) => {
  const answers = given.map(([question, isRight], index) => ({
    question: question as QuestionId,
    isRight,
    at: index * 60_000,
  }));
  const found = nextToAsk(questions, { answers, states, now: answers.length * 60_000 });
  return found && `${found.question.id} ${found.why}`;
};

describe('truth', () => {
  it('a question is as sure as the least sure key point of its steps', () => {
    expect(surenessOf(plain, states)).toBeUndefined();
    expect(surenessOf(ofHang, states)!).toBeLessThan(surenessOf(ofPrime, states)!);
    expect(surenessOf(ofBoth, states)).toBe(surenessOf(ofHang, states));
  });

  it('what somebody is least sure of comes first, what is about no step last', () => {
    expect(names(leastSureFirst(questions, states))).toEqual([
      'of-hang',
      'of-both',
      'of-prime',
      'plain',
    ]);
  });

  it('asks what is new and least sure, then what was missed when its turn has come', () => {
    expect(next()).toBe('of-hang unsure');
    expect(next(['of-hang', false])).toBe('of-both unsure');
    expect(next(['of-hang', false], ['of-both', true])).toBe('of-prime unsure');
    expect(next(['of-hang', false], ['of-both', true], ['of-prime', true])).toBe('plain unsure');
    const three = [
      ['of-both', true],
      ['of-prime', true],
      ['plain', true],
    ] as const;
    expect(next(['of-hang', false], ...three.map(([id, is]): [string, boolean] => [id, is]))).toBe(
      'of-hang missed',
    );
  });

  it('with nothing new left, asks the missed one early, and else the one of longest ago', () => {
    expect(next(['plain', true], ['of-prime', true], ['of-hang', false], ['of-both', true])).toBe(
      'of-hang missed',
    );
    expect(next(['plain', true], ['of-prime', true], ['of-hang', true], ['of-both', true])).toBe(
      'plain over-again',
    );
  });

  it('never asks the same twice running while there is another', () => {
    const only = nextToAsk([plain], {
      answers: [{ question: plain.id, isRight: false, at: 0 }],
      states,
      now: 1,
    });
    expect(only?.question).toBe(plain);
    expect(next(['of-hang', false])).not.toMatch(/^of-hang/);
    expect(nextToAsk([], { answers: [], states, now: 0 })).toBeUndefined();
  });
});
