import { difficulties, type Difficulty, type QuestionId } from '#engine/written/question.ts';
import type { DataSheetId, MethodId, SourceId } from '#engine/method/method.ts';
import { entries, record } from '#engine/compile/group.ts';
import { list } from '#engine/compile/list.ts';
import { anyQuantity, difference } from '#engine/compile/quantity.ts';
import { optional } from '#engine/compile/reader.ts';
import { idOf, oneOf, plain, text } from '#engine/compile/words.ts';
import { writtenFault } from './fault.ts';

const wrongChoice = record({ say: text, because: text });

/** Here and below, `undefined` was not written, and `null` was but could not be read. */
export const writtenQuestion = record({
  ask: text,
  point: text,
  of: optional(list(plain, 'steps, each as method/step'), []),
  difficulty: optional<Difficulty, Difficulty>(
    oneOf(difficulties, 'UNKNOWN_DIFFICULTY', 'difficulty'),
    'middling',
  ),
  source: idOf<SourceId>('source'),
  'choose-one': optional(
    record({ right: text, wrong: list(wrongChoice, 'wrong choices') }),
    undefined,
  ),
  'choose-all': optional(
    record({ right: list(text, 'right choices'), wrong: list(wrongChoice, 'wrong choices') }),
    undefined,
  ),
  order: optional(
    record({ steps: list(text, 'steps, in the right order'), because: text }),
    undefined,
  ),
  number: optional(
    record({
      answer: plain,
      within: optional(difference, undefined),
      unit: plain,
      slips: optional(list(record({ answer: anyQuantity, because: text }), 'slips'), []),
      'data-sheet': optional(idOf<DataSheetId>('data sheet'), undefined),
    }),
    undefined,
  ),
  'find-fault': optional(
    record({
      method: idOf<MethodId>('method'),
      site: optional(entries(idOf<string>('value'), 'site questions, each with its value'), []),
      fault: writtenFault,
      because: text,
    }),
    undefined,
  ),
  explain: optional(list(idOf<QuestionId>('question'), 'questions'), []),
});

export type WrittenQuestion = typeof writtenQuestion.blank;
