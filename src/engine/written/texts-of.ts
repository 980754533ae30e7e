import type { Text } from '#engine/text.ts';
import type { Question } from './question.ts';

/** The question with every text of it put through `change`. */
export function withTexts(question: Question, change: (text: Text) => Text): Question {
  const asked = { ask: change(question.ask), point: change(question.point) };
  const wrongOnes = (wrong: readonly { readonly say: Text; readonly because: Text }[]) =>
    wrong.map(({ say, because }) => ({ say: change(say), because: change(because) }));
  switch (question.kind) {
    case 'choose-one': {
      const { right, wrong } = question;
      return { ...question, ...asked, right: change(right), wrong: wrongOnes(wrong) };
    }
    case 'choose-all': {
      const { right, wrong } = question;
      return { ...question, ...asked, right: right.map(change), wrong: wrongOnes(wrong) };
    }
    case 'order': {
      const { steps, because } = question;
      return { ...question, ...asked, steps: steps.map(change), because: change(because) };
    }
    case 'number': {
      const slips = question.slips.map((slip) => ({ ...slip, because: change(slip.because) }));
      return { ...question, ...asked, slips };
    }
    case 'find-fault':
      return { ...question, ...asked, because: change(question.because) };
  }
}
