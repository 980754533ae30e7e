import { markFinds } from '#engine/inspection/mark-finds.ts';
import type { Shelf } from '#engine/marking/attempt-from.ts';
import type { Answer } from './answer.ts';
import type { Fitted } from './fitted.ts';
import { grade } from './grade.ts';
import { hiddenWall } from './hidden-wall.ts';
import type { FindFault } from './question.ts';
import type { FaultVerdict } from './verdict.ts';

/** Marked as any inspection is: the right place with the wrong kind of fault is worth half. */
export function markFault(question: Fitted<FindFault>, answer: Answer, shelf: Shelf): FaultVerdict {
  const wall = hiddenWall(question, shelf);
  if (!wall) throw new RangeError(`"${question.id}" has no fault that can be seen.`);
  const { point, because } = question;
  const finds =
    answer.kind === 'find-fault'
      ? markFinds(wall, [{ zone: answer.zone, kind: answer.fault, card: answer.card }])
      : markFinds(wall, []);
  return { kind: 'find-fault', ...grade(finds.score / 100), point, finds, because };
}
