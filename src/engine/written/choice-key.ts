import { hashText } from '#engine/random.ts';
import type { Text } from '#engine/text.ts';
import type { QuestionId } from './question.ts';

declare const keyed: unique symbol;

/** A name for a choice of one question that says no more than its texts do. */
export type ChoiceKey = string & { readonly [keyed]: 'choice' };

/** A name for a question that says nothing: ids are words of its author's, and may tell the answer. */
export type QuestionKey = string & { readonly [keyed]: 'question' };

/** So many digits in base 36 hold 62 bits: none of two choices of a question are ever the same. */
const digits = 12;

const named = (...parts: readonly string[]): string =>
  hashText(parts.join('\0')).toString(36).padStart(digits, '0').slice(-digits);

/** The same for every seed, and for whichever choice is right. */
export const choiceKey = (question: QuestionId, { en, es }: Text): ChoiceKey =>
  named(question, en, es) as ChoiceKey;

export const questionKey = (question: QuestionId): QuestionKey => named(question) as QuestionKey;
