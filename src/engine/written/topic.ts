import type { Text } from '#engine/text.ts';
import type { Question, TopicId } from './question.ts';

/** Questions about one part of the trade. */
export type Topic = {
  readonly id: TopicId;
  readonly title: Text;
  readonly about: Text;
  readonly questions: readonly Question[];
};
