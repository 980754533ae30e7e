import type { Shelf } from '#engine/marking/attempt-from.ts';
import type { Answer } from './answer.ts';
import { fitted } from './fitted.ts';
import { markChoice, markChoices } from './mark-choice.ts';
import { markFault } from './mark-fault.ts';
import { markNumber } from './mark-number.ts';
import { markOrder } from './mark-order.ts';
import type { Question } from './question.ts';
import type { Verdict } from './verdict.ts';

/**
 * Marks one answer. The same question, answer and shelf give the same verdict, whatever seed it was posed
 * by. What answers another kind of question, or names no choice of this one, takes nothing. Throws a
 * RangeError on a question that cannot be asked on this shelf.
 */
export function markAnswer(question: Question, answer: Answer, shelf: Shelf): Verdict {
  const asked = fitted(question, shelf);
  if (!asked) throw new RangeError(`"${question.id}" cannot be asked on its data sheet.`);
  switch (asked.kind) {
    case 'choose-one':
      return markChoice(asked, answer);
    case 'choose-all':
      return markChoices(asked, answer);
    case 'order':
      return markOrder(asked, answer);
    case 'number':
      return markNumber(asked, answer, shelf);
    case 'find-fault':
      return markFault(asked, answer, shelf);
  }
}
