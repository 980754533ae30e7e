import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { QuestionId } from '#engine/written/question.ts';
import { type Answered, dayOf, due, gaps, othersBetween, returns } from '#engine/written/return.ts';

const day = 86_400_000;
const noon = day / 2;

/** Answers as `day question+`, noon and a minute on for each. */
const answered = (...given: readonly string[]): readonly Answered[] =>
  given.map((one, index) => {
    const [, on = '', name = '', mark = ''] = /^(\d+) ([a-z]+)([+-])$/.exec(one) ?? [];
    const at = Number(on) * day + noon + index * 60_000;
    return { question: name as QuestionId, isRight: mark === '+', at };
  });

const back = (now: number, ...given: readonly string[]) =>
  returns(answered(...given), now * day + noon).map((one) =>
    one.kind === 'again' ? `${one.question} after ${one.others}` : `${one.question} day ${one.day}`,
  );

const dueOn = (now: number, ...given: readonly string[]) => {
  const at = now * day + noon;
  return due(returns(answered(...given), at), at).map(({ question }) => question);
};

describe('truth', () => {
  it('what was never missed does not come back', () => {
    expect(back(1, '1 a+', '1 b+')).toEqual([]);
  });

  it('what was missed comes back in the same sitting, after three others', () => {
    expect(back(1, '1 a-')).toEqual(['a after 3']);
    expect(back(1, '1 a-', '1 b+', '1 b+')).toEqual(['a after 2']);
    expect(dueOn(1, '1 a-', '1 b+', '1 c+')).toEqual([]);
    expect(dueOn(1, '1 a-', '1 b+', '1 c+', '1 d+')).toEqual(['a']);
  });

  it('what was left missed is due at once on another day', () => {
    expect(dueOn(2, '1 a-')).toEqual(['a']);
  });

  it('once right it comes back the next day, and then after two, four, eight days, up to 32', () => {
    expect(back(1, '1 a-', '1 a+')).toEqual(['a day 2']);
    const days = [1, 2, 4, 8, 16, 32, 64, 96, 128];
    days.forEach((_, index) => {
      const given = ['1 a-', ...days.slice(0, index + 1).map((on) => `${on} a+`)];
      const last = days[index]!;
      const gap = gaps[Math.min(index, gaps.length - 1)]!;
      expect(back(last, ...given)).toEqual([`a day ${last + gap}`]);
    });
    expect([...gaps]).toEqual([1, 2, 4, 8, 16, 32]);
  });

  it('a right answer before its day changes nothing', () => {
    expect(back(1, '1 a-', '1 a+', '1 a+', '1 a+')).toEqual(['a day 2']);
  });

  it('a miss starts it over', () => {
    expect(back(4, '1 a-', '1 a+', '2 a+', '4 a-')).toEqual(['a after 3']);
    expect(back(4, '1 a-', '1 a+', '2 a+', '4 a-', '4 a+')).toEqual(['a day 5']);
  });

  it('missed ones come before those that only wait for their day', () => {
    expect(dueOn(9, '1 a-', '1 a+', '2 b-', '2 b+', '3 c-')).toEqual(['c', 'a', 'b']);
  });

  it('a day begins at midnight where the person is', () => {
    expect(dayOf(day - 1, 0)).toBe(0);
    expect(dayOf(day, -360)).toBe(0);
    expect(dayOf(day + 6 * 3_600_000, -360)).toBe(1);
  });
});

describe('laws', () => {
  const anyAnswers = fc.array(
    fc.record({
      question: fc.constantFrom('a', 'b', 'c', 'd').map((name) => name as QuestionId),
      isRight: fc.boolean(),
      after: fc.integer({ min: 0, max: 3 * day }),
    }),
    { maxLength: 30 },
  );

  it('one entry for each question ever missed, never further off than the longest gap', () => {
    fc.assert(
      fc.property(anyAnswers, (given) => {
        let at = 0;
        const answers = given.map(({ question, isRight, after }) => {
          at += after;
          return { question, isRight, at };
        });
        const missed = new Set(
          answers.filter(({ isRight }) => !isRight).map((one) => one.question),
        );
        const found = returns(answers, at);
        expect(new Set(found.map(({ question }) => question))).toEqual(missed);
        expect(found.length).toBe(missed.size);
        for (const one of found) {
          if (one.kind === 'again') expect(one.others).toBeLessThanOrEqual(othersBetween);
          else expect(one.day - dayOf(at, 0)).toBeLessThanOrEqual(gaps.at(-1)!);
        }
      }),
    );
  });
});
