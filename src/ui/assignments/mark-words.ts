import { type Outcome, outcomes } from '#engine/marking/outcome.ts';
import { m } from '#ui/messages/generated/messages.js';
import { outcomeWords } from '#ui/review/item-words.ts';

const ofProblem: Readonly<Record<string, () => string>> = {
  right: m.problem_right,
  'partly right': m.problem_partly,
  'not right': m.problem_not_right,
};

const isOutcome = (word: string): word is Outcome => outcomes.some((one) => one === word);

/** The outcome of a wall or of a problem. */
export const markWords = ({ outcome }: { readonly outcome: string }): string =>
  isOutcome(outcome) ? outcomeWords[outcome].name() : (ofProblem[outcome]?.() ?? outcome);
