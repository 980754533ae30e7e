/** What was written for a problem as a whole, each part as it was typed. */
import { isFields } from '#engine/fields.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import type { PartId } from './family.ts';
import type { Written } from './marks.ts';

export type ProblemAnswer = {
  readonly kind: 'problem';
  readonly answers: readonly WrittenPart[];
};

/** `picked` is the unit that was chosen beside the field. */
export type WrittenPart = {
  readonly part: string;
  readonly text: string;
  readonly picked?: string;
};

const mostParts = 40;
const longestText = 200;

const isText = (value: unknown): value is string =>
  typeof value === 'string' && value.length <= longestText;

const isWritten = (one: unknown): one is WrittenPart =>
  isFields(one) &&
  isText(one['part']) &&
  isText(one['text']) &&
  (one['picked'] === undefined || isText(one['picked']));

/** The one door for it from outside; what it says of each part is for the marking to read. */
export function problemAnswerFrom(value: unknown): Result<ProblemAnswer, 'NOT_AN_ANSWER'> {
  if (!isFields(value) || value['kind'] !== 'problem') return fault('NOT_AN_ANSWER');
  const { answers } = value;
  if (!Array.isArray(answers) || answers.length > mostParts) return fault('NOT_AN_ANSWER');
  if (!answers.every(isWritten)) return fault('NOT_AN_ANSWER');
  const isTwice = new Set(answers.map(({ part }) => part)).size < answers.length;
  return isTwice ? fault('NOT_AN_ANSWER') : ok({ kind: 'problem', answers });
}

/** For `markAnswers`. A unit that this part does not offer is as good as none. */
export const writtenIn = (
  { answers }: ProblemAnswer,
  unitsOf: (part: string) => readonly string[],
): ReadonlyMap<PartId, Written> =>
  new Map(
    answers.map(({ part, text, picked }) => {
      const unit = picked !== undefined && unitsOf(part).includes(picked) ? { picked } : {};
      return [part as PartId, { text, ...unit }] as const;
    }),
  );
