/** What was answered of each topic, kept in this browser: only which, whether right, and when. */
import type { Answered } from '#engine/written/return.ts';
import type { TopicId } from '#engine/written/question.ts';
import type { Store } from '#ui/attempts/browser-store.ts';

/** The oldest are dropped: what comes back is told by the latest answers of each question. */
const mostKept = 2000;

const placeOf = (topic: TopicId): string => `written/${topic}`;

const isAnswered = (value: unknown): value is Answered => {
  if (typeof value !== 'object' || value === null) return false;
  const { question, isRight, at } = value as Readonly<Record<string, unknown>>;
  return typeof question === 'string' && typeof isRight === 'boolean' && Number.isFinite(at);
};

/** The earliest first. What cannot be read counts as nothing. */
export function keptAnswers(store: Store, topic: TopicId): readonly Answered[] {
  const kept = store.read(placeOf(topic));
  return Array.isArray(kept) ? kept.filter(isAnswered) : [];
}

/** Whether the browser will still have them tomorrow. */
export const keepAnswers = (store: Store, topic: TopicId, answers: readonly Answered[]): boolean =>
  store.write(placeOf(topic), answers.slice(-mostKept));

export const forgetAnswers = (store: Store, topic: TopicId): void => store.remove(placeOf(topic));

/** So many minutes the person's clock is ahead of UTC. */
export const minutesAheadNow = (): number => -new Date().getTimezoneOffset();
