/** What has faded of a topic: what a person showed of its steps when they last built a wall, and how long ago. */
import type { IsoDate } from '#engine/calendar.ts';
import type { Faded } from '#engine/exam/leaning.ts';
import type { PersonPoints } from '#engine/tracing/points-of.ts';
import type { Topic } from '#engine/written/topic.ts';
import { shareLeft } from './skill-fade.ts';

type Seen = Pick<PersonPoints, 'methods'>;

/**
 * By the steps that a topic's questions are about: what a person showed of them, and how long ago. A topic
 * is left out where they showed nothing of it.
 */
export function fadedTopics(topics: Iterable<Topic>, { methods }: Seen, today: IsoDate): Faded {
  const gone = new Map<string, number[]>();
  for (const { point, probability, lastSeen } of methods.flatMap(({ points }) => points)) {
    if (lastSeen === undefined) continue;
    const last = lastSeen.slice(0, 10) as IsoDate;
    const step = `${point.method}/${point.step}`;
    const left = probability * shareLeft(last, today, 'accuracy');
    gone.set(step, [...(gone.get(step) ?? []), 1 - left]);
  }
  return new Map(
    [...topics].flatMap(({ id, questions }) => {
      const steps = new Set(
        questions.flatMap(({ of }) => of.map((one) => `${one.method}/${one.step}`)),
      );
      const shown = [...steps].flatMap((step) => gone.get(step) ?? []);
      return shown.length > 0 ? [[id, mean(shown)] as const] : [];
    }),
  );
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
