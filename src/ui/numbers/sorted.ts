import type { QuestionLine } from './number-view.ts';
import { troubleOf } from './number-words.ts';

export const sorts = ['trouble', 'hardest', 'asked'] as const;
export type Sort = (typeof sorts)[number];

export const sortFrom = (word: string | null): Sort =>
  sorts.find((one) => one === word) ?? 'trouble';

const shareOf = ({ verdict: { proportion } }: QuestionLine): number =>
  proportion.enough ? proportion.value.share : 2;

const keys: Readonly<Record<Sort, (question: QuestionLine) => number>> = {
  trouble: ({ verdict }) => -troubleOf(verdict),
  hardest: shareOf,
  asked: ({ verdict }) => -verdict.answers,
};

/** Those that are retired come last: they were seen to. */
export const sorted = (questions: readonly QuestionLine[], sort: Sort): readonly QuestionLine[] =>
  questions.toSorted(
    (a, b) =>
      Number(a.isRetired) - Number(b.isRetired) ||
      keys[sort](a) - keys[sort](b) ||
      a.id.localeCompare(b.id),
  );
