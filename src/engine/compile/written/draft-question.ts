import type { DataSheetId } from '#engine/method/method.ts';
import {
  questionKinds,
  type Asked,
  type Question,
  type QuestionId,
  type QuestionKind,
  type TopicId,
} from '#engine/written/question.ts';
import { keyAt } from '#engine/compile/source-file.ts';
import type { At } from './at.ts';
import { draftFindFault } from './draft-find-fault.ts';
import { draftNumber } from './draft-number.ts';
import { stepsOf } from './step-names.ts';
import type { QuestionShelf } from './shelf.ts';
import type { WrittenQuestion } from './question.ts';

export type About = {
  readonly id: QuestionId;
  readonly topic: TopicId;
  readonly sheet: DataSheetId | undefined;
  readonly shelf: QuestionShelf;
};

/** The question that is written there; undefined where a fault stands in the way. */
export function draftQuestion(
  at: At,
  written: WrittenQuestion,
  about: About,
): Question | undefined {
  const kind = kindOf(at, written);
  const { ask, point, difficulty, source, explain } = written;
  const { id, topic, sheet, shelf } = about;
  const of = stepsOf(at, written.of, shelf);
  if (!kind || sheet === undefined) return undefined;
  const dataSheet = sheet;
  const asked: Asked = { id, topic, ask, point, of, difficulty, source, dataSheet, explain };
  switch (kind) {
    case 'choose-one':
      return { ...asked, kind, ...written[kind]! };
    case 'choose-all':
      return { ...asked, kind, ...written[kind]! };
    case 'order':
      return { ...asked, kind, ...written[kind]! };
    case 'number':
      return draftNumber(at, written[kind]!, asked, shelf);
    case 'find-fault':
      return draftFindFault(at, written[kind]!, asked, shelf);
  }
}

function kindOf({ file, path }: At, written: WrittenQuestion): QuestionKind | undefined {
  const [kind, ...others] = questionKinds.filter((known) => written[known] !== undefined);
  const listed = questionKinds.join(', ');
  if (!kind) {
    const message = 'Nothing says how this question is answered.';
    file.fault('NO_KIND', keyAt(file, path), message, `Add one of: ${listed}.`);
    return undefined;
  }
  for (const other of others) {
    const message = `"${other}" stands beside "${kind}".`;
    const cure = 'Keep one of them, or make two questions.';
    file.fault('TWO_KINDS', keyAt(file, [...path, other]), message, cure);
  }
  return others.length > 0 ? undefined : kind;
}
