import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Answer } from '#engine/written/answer.ts';
import { choiceKey } from '#engine/written/choice-key.ts';
import { markAnswer } from '#engine/written/mark-answer.ts';
import { pairsKept } from '#engine/written/mark-order.ts';
import type { Question } from '#engine/written/question.ts';
import type { Text } from '#engine/text.ts';
import { onChangedSheet, question, sound } from './asked.ts';

const mark = (asked: Question, answer: Answer) => markAnswer(asked, answer, sound);

describe('truth: choose one', () => {
  const asked = question('first-of-all', 'choose-one');
  const take = (say: Text) => mark(asked, { kind: 'choose-one', choice: choiceKey(asked.id, say) });

  it('the right choice is right', () => {
    expect(take(asked.right)).toMatchObject({ outcome: 'right', credit: 1, because: undefined });
  });

  it.each(asked.wrong)('a wrong choice is told its own reason: $say.en', ({ say, because }) => {
    expect(take(say)).toMatchObject({ outcome: 'wrong', credit: 0, taken: say, because });
  });

  it('what is none of the choices takes nothing', () => {
    const verdict = take({ en: 'Something', es: 'Algo' });
    expect(verdict).toMatchObject({ outcome: 'wrong', credit: 0, taken: undefined });
    expect(mark(asked, { kind: 'number', text: '8 in' })).toEqual(verdict);
  });
});

describe('truth: choose all', () => {
  const asked = question('keeps-water-out', 'choose-all');
  const filledIn: Text = { en: 'A turn-up of 8 in', es: 'Una vuelta de 8 pulg' };
  const [sheet] = asked.right as readonly [Text];
  const take = (...says: readonly Text[]) =>
    mark(asked, {
      kind: 'choose-all',
      choices: says.map((say) => choiceKey(asked.id, say)),
    });

  it('all the right ones and nothing else is right', () => {
    expect(take(sheet, filledIn)).toMatchObject({ outcome: 'right', credit: 1 });
  });

  it('one of two is half right; with a wrong one beside it, nothing', () => {
    expect(take(sheet)).toMatchObject({ outcome: 'partly', credit: 0.5 });
    expect(take(sheet, asked.wrong[0]!.say)).toMatchObject({ outcome: 'wrong', credit: 0 });
  });

  it('taking everything is worth less than all the right ones, and taking none is worth nothing', () => {
    expect(take(sheet, filledIn, asked.wrong[0]!.say)).toMatchObject({ credit: 0.5 });
    expect(take()).toMatchObject({ outcome: 'wrong', credit: 0 });
  });

  it('each choice is told whether it is right, was taken, and why not', () => {
    const verdict = take(filledIn, asked.wrong[0]!.say);
    expect(verdict.kind === 'choose-all' && verdict.parts).toEqual([
      { say: sheet, isRight: true, isTaken: false, because: undefined },
      { say: filledIn, isRight: true, isTaken: true, because: undefined },
      { ...asked.wrong[0], isRight: false, isTaken: true },
    ]);
  });
});

describe('truth: order', () => {
  const asked = question('in-this-order', 'order');
  const put = (...places: readonly number[]) =>
    mark(asked, {
      kind: 'order',
      steps: places.map((place) => choiceKey(asked.id, asked.steps[place]!)),
    });

  it('the right order is right, and the reverse keeps no pair', () => {
    expect(put(0, 1, 2)).toMatchObject({ outcome: 'right', credit: 1, kept: 3, pairs: 3 });
    expect(put(2, 1, 0)).toMatchObject({ outcome: 'wrong', credit: 0, kept: 0 });
  });

  it('one swap of neighbours keeps two pairs of three, worth a third', () => {
    const verdict = put(1, 0, 2);
    expect(verdict).toMatchObject({ outcome: 'partly', credit: 0.333, kept: 2 });
    expect(verdict.kind === 'order' && verdict.steps.map(({ off }) => off)).toEqual([1, -1, 0]);
  });

  it('a step that was not placed keeps no pair and is told so', () => {
    const verdict = put(0, 2);
    expect(verdict).toMatchObject({ kept: 1, credit: 0 });
    expect(verdict.kind === 'order' && verdict.steps.map(({ off }) => off)).toEqual([
      0,
      undefined,
      -1,
    ]);
  });
});

describe('truth: pairs kept', () => {
  // Inversions of permutations against the identity, counted anew for this project.
  it.each([
    [[2, 1, 3, 4, 5], 1],
    [[5, 1, 2, 3, 4], 4],
    [[2, 1, 4, 3, 5], 2],
    [[2, 4, 1, 3], 3],
    [[5, 4, 3, 2, 1], 10],
    [[8, 7, 6, 5, 4, 3, 2, 1], 28],
  ])('%j turns round %i pairs', (places, turned) => {
    expect(pairsKept(places)).toBe((places.length * (places.length - 1)) / 2 - turned);
  });
});

describe('truth: number', () => {
  const high = question('how-high', 'number');
  const warm = question('how-warm', 'number');
  const found = (asked: typeof high, text: string) => {
    const verdict = mark(asked, { kind: 'number', text });
    return verdict.kind === 'number' ? verdict.found : undefined;
  };

  it.each(['8', '8 in', '8"', '8 pulg', '0\'-8"', '20.32 cm', '10 1/2', '14 in'])(
    '%s is right where 8 in or more is',
    (text) => expect(found(high, text)).toBe('right'),
  );

  it('a known wrong answer is told what it is, in whatever unit it was written', () => {
    expect(mark(high, { kind: 'number', text: '1/2 ft' })).toMatchObject({
      found: 'slip',
      outcome: 'wrong',
      because: high.slips[0]!.because,
    });
  });

  it.each([
    ['8 ft', 'wrong-unit'],
    ['8 mm', 'wrong-unit'],
    ['8 min', 'wrong-unit'],
    ['8 °F', 'wrong-unit'],
    ['7 in', 'too-low'],
    ['7', 'too-low'],
    ['15 in', 'too-high'],
    ['-8', 'too-low'],
    ['high', 'unreadable'],
    ['', 'unreadable'],
  ])('%s is %s', (text, finding) => expect(found(high, text)).toBe(finding));

  it('a quantity is right as far off as it says, and no further', () => {
    const answers = ['65 °F', '75', '64 °F', '76 °F', '21 °C'];
    expect(answers.map((text) => found(warm, text))).toEqual([
      'right',
      'right',
      'too-low',
      'too-high',
      'right',
    ]);
  });

  it('says what is right in both languages, and how the answer was read', () => {
    expect(mark(high, { kind: 'number', text: '6' })).toMatchObject({
      right: { en: '8 in or more', es: '8 pulg o más' },
      read: { en: '6 in', es: '6 pulg' },
    });
  });

  it('is judged by the numbers of the sheet, whatever they are', () => {
    const verdict = markAnswer(high, { kind: 'number', text: '8 in' }, onChangedSheet);
    expect(verdict).toMatchObject({ found: 'too-low', point: { en: '10 in at least.' } });
  });
});

describe('truth: find the fault', () => {
  const asked = question('what-is-missing', 'find-fault');
  const point = (zone: 'wall' | 'top-edge', fault: 'left-out' | 'rushed') =>
    mark(asked, { kind: 'find-fault', zone, fault });

  it('the place and the kind is right, the place alone is worth half', () => {
    expect(point('wall', 'left-out')).toMatchObject({ outcome: 'right', credit: 1 });
    expect(point('wall', 'rushed')).toMatchObject({ outcome: 'partly', credit: 0.5 });
  });

  it('no answer finds nothing', () => {
    expect(mark(asked, { kind: 'number', text: '1' })).toMatchObject({
      outcome: 'wrong',
      credit: 0,
    });
  });
});

describe('laws', () => {
  const permutation = fc.shuffledSubarray([0, 1, 2, 3, 4, 5], { minLength: 6 });

  it('pairs kept are all pairs less those that a bubble sort has to turn round', () => {
    fc.assert(
      fc.property(permutation, (places) => {
        const sorted = [...places];
        let swaps = 0;
        for (let last = sorted.length - 1; last > 0; last -= 1) {
          for (let at = 0; at < last; at += 1) {
            if (sorted[at]! <= sorted[at + 1]!) continue;
            [sorted[at], sorted[at + 1]] = [sorted[at + 1]!, sorted[at]!];
            swaps += 1;
          }
        }
        expect(pairsKept(places)).toBe(15 - swaps);
      }),
    );
  });

  it('never throws on any text for a number, and credits only what is right', () => {
    const asked = question('how-high', 'number');
    fc.assert(
      fc.property(fc.string({ maxLength: 30 }), (text) => {
        const verdict = mark(asked, { kind: 'number', text });
        expect(verdict.credit).toBe(verdict.outcome === 'right' ? 1 : 0);
      }),
    );
  });
});
