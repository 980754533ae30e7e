import type { QuestionId } from '#engine/written/question.ts';

const mark = 'made-';

export const madeId = (name: string): QuestionId => `${mark}${name}` as QuestionId;

/** Whether a question was made from a method, and nobody wrote it. */
export const isMade = (id: string): boolean => id.startsWith(mark);
