import { describe, expect, test } from 'vitest';
import type { Answer } from '#engine/written/answer.ts';
import { isMade } from '#engine/written/made/made-id.ts';
import { keyTo } from '#engine/written/key.ts';
import type { Question } from '#engine/written/question.ts';
import { Asking } from '#ui/written/asking.svelte.ts';
import { shippedTopic } from '../shipped-content.ts';

const { bundle, shelf } = shippedTopic('weather-and-waiting');
const day = 86_400_000;

function started(at = { now: 0 }) {
  const asking = new Asking(bundle.topic, shelf, () => ({ now: at.now, minutesAhead: 0 }));
  asking.resume([]);
  return { asking, at };
}

/** Right by the key, or wrong by giving nothing that is right. */
function answerTo(question: Question, isRight: boolean): Answer {
  const key = keyTo(question, shelf);
  if (!isRight || !key) return { kind: 'number', text: '?' };
  switch (key.kind) {
    case 'choose-one':
      return { kind: key.kind, choice: key.right };
    case 'choose-all':
      return { kind: key.kind, choices: key.right };
    case 'order':
      return { kind: key.kind, steps: key.right };
    case 'number':
      return { kind: key.kind, text: key.right.en.split(/ or | to |, /)[0]! };
    case 'find-fault':
      return { kind: key.kind, zone: key.zones[0]!, fault: key.fault };
  }
}

const answer = (asking: Asking, isRight: boolean): void =>
  asking.hand(answerTo(asking.put!.question, isRight));

describe('truth', () => {
  test('every question is asked before one comes back that was right', () => {
    const { asking } = started();
    const asked: string[] = [];
    for (let n = 0; n < asking.count; n += 1) {
      asked.push(asking.put!.question.id);
      answer(asking, true);
      expect(asking.verdict?.outcome).toBe('right');
      asking.next();
    }
    expect(new Set(asked).size).toBe(asking.count);
    expect(asking.put?.why).toBe('over-again');
    expect(asking.standing).toEqual({ asked: asking.count, right: asking.count });
  });

  test('what was missed comes back after three others, and again the next day', () => {
    const { asking, at } = started();
    const missed = asking.put!.question.id;
    answer(asking, false);
    expect(asking.verdict?.outcome).toBe('wrong');
    for (let n = 0; n < 3; n += 1) {
      asking.next();
      expect(asking.put?.question.id).not.toBe(missed);
      answer(asking, true);
    }
    asking.next();
    expect(asking.put).toMatchObject({ why: 'missed', question: { id: missed } });
    answer(asking, true);
    asking.next();
    expect(asking.put?.question.id).not.toBe(missed);
    at.now += day;
    answer(asking, true);
    asking.next();
    expect(asking.put).toMatchObject({ why: 'missed', question: { id: missed } });
  });

  test('an answer counts once, however often it is handed in', () => {
    const { asking } = started();
    answer(asking, true);
    answer(asking, false);
    expect(asking.answers).toHaveLength(1);
    expect(asking.verdict?.outcome).toBe('right');
  });
});

describe('questions made from methods', () => {
  const at = { now: 0 };
  const withMade = () =>
    new Asking(bundle.topic, shelf, () => ({ now: at.now, minutesAhead: 0 }), bundle.made);

  test('are asked among those of the topic, and every one can be answered rightly', () => {
    at.now = 0;
    const asking = withMade();
    asking.resume([]);
    expect(bundle.made.length).toBeGreaterThan(3);
    expect(asking.count).toBe(bundle.topic.questions.length + bundle.made.length);
    const asked = new Set<string>();
    for (let n = 0; n < asking.count; n += 1) {
      asked.add(asking.put!.question.id);
      answer(asking, true);
      asking.next();
    }
    expect(bundle.made.filter(({ id }) => !asked.has(id))).toEqual([]);
  });

  test('one that was missed comes back after three others, and on the next day in another visit', () => {
    at.now = 0;
    const asking = withMade();
    asking.resume([]);
    while (!isMade(asking.put!.question.id)) {
      answer(asking, true);
      asking.next();
    }
    const missed = asking.put!.question.id;
    answer(asking, false);
    for (let n = 0; n < 3; n += 1) {
      asking.next();
      expect(asking.put?.question.id).not.toBe(missed);
      answer(asking, true);
    }
    asking.next();
    expect([asking.put?.question.id, asking.put?.why]).toEqual([missed, 'missed']);
    answer(asking, true);
    asking.next();
    // The one just answered never follows itself.
    answer(asking, true);
    at.now = day;
    const again = withMade();
    again.resume(asking.answers);
    expect([again.put?.question.id, again.put?.why]).toEqual([missed, 'missed']);
  });

  test('after a miss, another question about the same step is asked before those never missed', () => {
    at.now = 0;
    const asking = withMade();
    const all = [...bundle.topic.questions, ...bundle.made];
    const nameOf = ({ method, step }: Question['of'][number]) => `${method}/${step}`;
    const missed = all.find(({ id, of }) =>
      of.some((one) =>
        all.some((other) => other.id !== id && other.of.some((two) => nameOf(two) === nameOf(one))),
      ),
    )!;
    asking.resume([{ question: missed.id, isRight: false, at: 0 }]);
    const steps = new Set(missed.of.map(nameOf));
    expect(asking.put!.question.of.some((one) => steps.has(nameOf(one)))).toBe(true);
    expect(asking.put!.question.id).not.toBe(missed.id);
  });
});
