import { describe, expect, test } from 'vitest';
import { madeForTopic } from '#engine/compile/made-for-topic.ts';
import { isMade } from '#engine/written/made/made-id.ts';
import { sameness } from '#engine/written/made/made-question.ts';
import { keyTo } from '#engine/written/key.ts';
import { statesFromAnswers } from '#engine/written/states-from-answers.ts';
import { openContent } from '#server/content.ts';

const content = openContent();
const topics = [...content.topics.values()];
const madeFor = new Map(topics.map((topic) => [topic, madeForTopic(content, topic)]));
const nameOf = ({ method, step }: { method: string; step: string }) => `${method}/${step}`;

describe('laws', () => {
  test.each(topics.map((topic) => [topic.id as string, topic] as const))(
    '%s: made questions are about its own steps, have a key, and repeat none that was written',
    (_, topic) => {
      const made = madeFor.get(topic)!;
      const steps = topic.questions.flatMap(({ of }) => of.map(nameOf));
      const written = topic.questions.map(sameness);
      expect(made.length).toBeLessThanOrEqual(topic.questions.length / 2);
      expect(made.every(({ id }) => isMade(id))).toBe(true);
      expect(made.filter(({ of }) => !of.every((one) => steps.includes(nameOf(one))))).toEqual([]);
      expect(made.filter((question) => keyTo(question, content) === undefined)).toEqual([]);
      expect(made.map(sameness).filter((one) => written.includes(one))).toEqual([]);
      expect(new Set(made.map(({ id }) => id)).size).toBe(made.length);
      expect(madeForTopic(content, topic).map(({ id }) => id)).toEqual(made.map(({ id }) => id));
    },
  );

  test('most topics have some, of several kinds, none of which crowds out another', () => {
    const all = [...madeFor.values()];
    expect(all.filter(({ length }) => length > 0).length).toBeGreaterThan(topics.length / 2);
    const counts = Map.groupBy(all.flat(), ({ kind }) => kind);
    expect(counts.size).toBeGreaterThan(2);
    expect(Math.min(...[...counts.values()].map(({ length }) => length))).toBeGreaterThan(4);
  });
});

describe('truth', () => {
  test('a miss lowers how sure a step is below a right answer, and strange answers count for nothing', () => {
    const questions = topics
      .flatMap((topic) => topic.questions)
      .filter(({ of }) => of.length === 1);
    const [one, two] = [
      questions[0]!,
      questions.find(({ of }) => nameOf(of[0]!) !== nameOf(questions[0]!.of[0]!))!,
    ];
    const states = statesFromAnswers(questions, [
      { question: one.id, isRight: false, at: 1 },
      { question: two.id, isRight: true, at: 2 },
      { question: 'gone' as typeof one.id, isRight: false, at: 3 },
    ]);
    const of = (question: typeof one) =>
      states.find(({ point }) => nameOf(point) === nameOf(question.of[0]!))!;
    expect(states.length).toBe(2);
    expect(of(one).observations).toEqual([false]);
    expect(of(one).probability).toBeLessThan(of(two).probability);
  });
});
