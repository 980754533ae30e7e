import type { Difficulty } from './question.ts';

/**
 * The share of candidates that is expected to get a question right, by what its author says; this
 * project's own choice, and the same wherever a form is drawn.
 */
export const expectedShare: Readonly<Record<Difficulty, number>> = {
  easy: 0.85,
  middling: 0.7,
  hard: 0.5,
};
