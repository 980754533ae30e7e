import type { DataSheetId } from '#engine/method/method.ts';
import { entries, record } from '#engine/compile/group.ts';
import { atLeastOne } from '#engine/compile/list.ts';
import { optional } from '#engine/compile/reader.ts';
import { idOf, text } from '#engine/compile/words.ts';
import { writtenQuestion } from './question.ts';

export const writtenTopic = record({
  title: text,
  about: text,
  'data-sheet': optional(idOf<DataSheetId>('data sheet'), undefined),
  questions: atLeastOne(
    entries(writtenQuestion, 'a group of questions, each under its id'),
    'question',
  ),
});

export type WrittenTopic = typeof writtenTopic.blank;
