import { expect, test } from 'vitest';
import type { IsoDate } from '#engine/calendar.ts';
import { fadedTopics } from '#engine/competence/faded-topics.ts';
import type { KeyPoint } from '#engine/tracing/key-point.ts';
import type { PersonPoints } from '#engine/tracing/points-of.ts';
import { content } from '../../content/walls.ts';

const today = '2030-05-01' as IsoDate;

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
