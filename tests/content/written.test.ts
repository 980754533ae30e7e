/** What holds of every shipped question. */
import { describe, expect, it } from 'vitest';
import { languages, type Text } from '#engine/text.ts';
import { answerFrom } from '#engine/written/answer-from.ts';
import type { Answer } from '#engine/written/answer.ts';
import { choiceKey } from '#engine/written/choice-key.ts';
import { fitted } from '#engine/written/fitted.ts';
import { hiddenWall } from '#engine/written/hidden-wall.ts';
import { keyTo } from '#engine/written/key.ts';
import { markAnswer } from '#engine/written/mark-answer.ts';
import { posed } from '#engine/written/posed.ts';
import { questionKinds, type Question } from '#engine/written/question.ts';
import { readsAs } from '#engine/written/reads-as.ts';
import { content } from './walls.ts';
import { questionCounts } from './question-counts.ts';

const topics = [...content.topics.values()];
const questions = topics.flatMap((topic) => topic.questions);

/** What the key says is right, as an answer. */
function rightAnswer(question: Question): Answer {
  const key = keyTo(question, content)!;
  switch (key.kind) {
    case 'choose-one':
      return { kind: key.kind, choice: key.right };
    case 'choose-all':
      return { kind: key.kind, choices: key.right };
    case 'order':
      return { kind: key.kind, steps: key.right };
    case 'find-fault':
      return { kind: key.kind, zone: key.zones[0]!, fault: key.fault };
    case 'number':
      return { kind: key.kind, text: rightNumber(key.right.en) };
  }
}

/** The first number of `8 in or more`, `6 in to 8 in` or `45°, at most 15° off`. */
const rightNumber = (rule: string): string => rule.split(/ or | to |, /)[0]!;

const outcome = (question: Question, answer: Answer) =>
  markAnswer(question, answer, content).outcome;

describe('truth', () => {
  it('there are as many questions of each topic and kind as the table says', () => {
    const counted = topics.map(({ id, questions: own }) => [
      id,
      ...questionKinds.map((kind) => own.filter((one) => one.kind === kind).length),
    ]);
    expect(counted).toEqual(questionCounts);
  });

  it('there are 150 or more, of every kind and of every method', () => {
    expect(questions.length).toBeGreaterThanOrEqual(150);
    expect(new Set(questions.map(({ kind }) => kind))).toEqual(new Set(questionKinds));
    const about = new Set(questions.flatMap(({ of }) => of.map(({ method }) => method)));
    expect([...about].sort()).toEqual([...content.methods.keys()].sort());
  });
});

describe('laws', () => {
  it.each(questions)('its key is marked right: $id', (question) => {
    const shown = posed(question, 'a', content)!;
    const answer = answerFrom(rightAnswer(question), shown);
    expect(answer.ok ? outcome(question, answer.value) : answer.error).toBe('right');
  });

  it('each wrong choice is marked wrong, with its own reason and in both languages', () => {
    for (const question of questions) {
      const asked = fitted(question, content)!;
      if (asked.kind !== 'choose-one') continue;
      for (const { say, because } of asked.wrong) {
        const answer = { kind: 'choose-one', choice: choiceKey(asked.id, say) } as const;
        const verdict = markAnswer(question, answer, content);
        expect(verdict, asked.id).toMatchObject({ outcome: 'wrong', because });
        for (const language of languages) expect(because[language].trim()).not.toBe('');
      }
    }
  });

  it('each slip is recognised as it is written in either language', () => {
    for (const question of questions) {
      if (question.kind !== 'number') continue;
      for (const { answer, because } of question.slips) {
        const slip = { ...question, answer: { kind: 'quantity', value: answer } } as const;
        const text = keyTo({ ...slip, answer: { ...slip.answer, within: undefined } }, content)!;
        if (text.kind !== 'number') throw new Error(text.kind);
        for (const language of languages) {
          const given = { kind: 'number', text: text.right[language] } as const;
          const verdict = markAnswer(question, given, content);
          expect(verdict, question.id).toMatchObject({ found: 'slip' });
          expect(verdict.kind === 'number' && verdict.because).toEqual(
            fittedBecause(question, because),
          );
        }
      }
    }
  });

  it('an order taken from the end, or with two steps exchanged, is not right', () => {
    for (const question of questions) {
      const answer = rightAnswer(question);
      if (answer.kind !== 'order') continue;
      const [first, second, ...rest] = answer.steps;
      expect(outcome(question, { ...answer, steps: answer.steps.toReversed() })).toBe('wrong');
      const swapped = { ...answer, steps: [second!, first!, ...rest] };
      expect(outcome(question, swapped), question.id).not.toBe('right');
    }
  });

  it('a fault is found by its place and kind, and by no other kind there', () => {
    for (const question of questions) {
      if (question.kind !== 'find-fault') continue;
      const { zones, kind } = hiddenWall(question, content)!.faults[0]!;
      const other = kind === 'left-out' ? 'rushed' : 'left-out';
      for (const zone of zones) {
        const find = { kind: 'find-fault', zone, fault: kind } as const;
        expect(outcome(question, find), question.id).toBe('right');
        expect(outcome(question, { ...find, fault: other }), question.id).toBe('partly');
      }
    }
  });

  it('no two questions ask the same, and no text is the same in both languages by mistake', () => {
    for (const language of languages) {
      const asks = questions.map((one) => `${readsAs(one.ask[language])}/${detailOf(one)}`);
      const twice = asks.filter((ask, index) => asks.indexOf(ask) < index);
      expect(twice).toEqual([]);
    }
    const untranslated = questions.filter(
      ({ ask, point }) => ask.en === ask.es || point.en === point.es,
    );
    expect(untranslated.map(({ id }) => id)).toEqual([]);
  });

  it('the right choice is not to be told by its length', () => {
    const ones = questions.filter((one) => one.kind === 'choose-one');
    for (const language of languages) {
      const lengths = ones.map(({ right, wrong }) => ({
        right: right[language].length,
        wrong: wrong.map(({ say }) => say[language].length),
      }));
      const longest = lengths.filter((of) => of.wrong.every((length) => length < of.right));
      const shortest = lengths.filter((of) => of.wrong.every((length) => length > of.right));
      // By chance each would be one of three to five; who goes by length should gain little.
      expect(longest.length / ones.length).toBeLessThan(0.45);
      expect(shortest.length / ones.length).toBeLessThan(0.45);
    }
  });
});

const fittedBecause = (question: Question, because: Text): Text => {
  const asked = fitted(question, content)!;
  const place =
    question.kind === 'number' ? question.slips.findIndex((one) => one.because === because) : -1;
  return asked.kind === 'number' ? asked.slips[place]!.because : because;
};

/** Faults may be asked for in the same words, on different walls. */
const detailOf = (question: Question): string =>
  question.kind === 'find-fault' ? question.id : '';
