import { describe, expect, test } from 'vitest';
import { isKeptRun } from '#engine/written/kept-run.ts';
import { runOf } from '#engine/written/run.ts';
import { writtenRun } from '#server/demo/written-answers.ts';
import { content } from '../../content/walls.ts';

const topics = [...content.topics.values()];

describe('laws', () => {
  test('a seed picks the same questions in the same order, none twice, and others another', () => {
    for (const topic of topics) {
      const ids = (seed: string) =>
        runOf(topic, { seed, count: 8 }, content).map(({ id }) => id as string);
      expect(ids('1')).toEqual(ids('1'));
      expect(new Set(ids('1')).size).toBe(8);
      expect(['2', '3', '4'].some((seed) => ids(seed).join() !== ids('1').join())).toBe(true);
      expect(runOf(topic, { seed: '1', count: 40 }, content)).toHaveLength(topic.questions.length);
    }
  });

  test('what was not written by this program is no run', () => {
    const stamp = { id: 'a', at: '2030-05-01T07:30:00.000Z', seed: '1' };
    const run = writtenRun(content, { topic: topics[0]!.id, questions: 5 }, 0, stamp)!;
    expect(isKeptRun(run)).toBe(true);
    const broken = [
      { ...run, at: 'yesterday' },
      { ...run, count: 0 },
      { ...run, count: 41 },
      { ...run, work: 'none' },
      { ...run, questions: [...run.questions, ...run.questions] },
      { ...run, answers: [...run.answers, null] },
      { ...run, answers: ['right'] },
      { ...run, questions: [] },
      null,
    ];
    for (const one of broken) expect(isKeptRun(one)).toBe(false);
  });
});
