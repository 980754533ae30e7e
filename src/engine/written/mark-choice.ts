import type { Answer } from './answer.ts';
import { choiceKey } from './choice-key.ts';
import { grade } from './grade.ts';
import type { Fitted } from './fitted.ts';
import type { ChooseAll, ChooseOne } from './question.ts';
import type { ChoicePart, ChoicesVerdict, ChoiceVerdict } from './verdict.ts';

export function markChoice(question: Fitted<ChooseOne>, answer: Answer): ChoiceVerdict {
  const { id, right, wrong, point } = question;
  const choice = answer.kind === 'choose-one' ? answer.choice : undefined;
  const isRight = choice === choiceKey(id, right);
  const mistake = wrong.find(({ say }) => choiceKey(id, say) === choice);
  return {
    kind: 'choose-one',
    ...grade(isRight ? 1 : 0),
    point,
    right,
    taken: isRight ? right : mistake?.say,
    because: mistake?.because,
  };
}

/**
 * Each right choice taken counts its share, and each wrong one taken takes such a share away again, down to
 * nothing: taking all, or none, is worth no more than it shows. This project's own choice.
 */
export function markChoices(question: Fitted<ChooseAll>, answer: Answer): ChoicesVerdict {
  const { id, right, wrong, point } = question;
  const taken = new Set<string>(answer.kind === 'choose-all' ? answer.choices : []);
  const parts: readonly ChoicePart[] = [
    ...right.map((say) => ({ say, isRight: true, because: undefined })),
    ...wrong.map(({ say, because }) => ({ say, isRight: false, because })),
  ].map((part) => ({ ...part, isTaken: taken.has(choiceKey(id, part.say)) }));
  const hits = parts.filter(({ isRight, isTaken }) => isRight && isTaken).length;
  const misses = parts.filter(({ isRight, isTaken }) => !isRight && isTaken).length;
  return { kind: 'choose-all', ...grade((hits - misses) / right.length), point, parts };
}
