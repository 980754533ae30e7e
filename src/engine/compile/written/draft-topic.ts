import type { DataSheetId } from '#engine/method/method.ts';
import type { Question, QuestionId, TopicId } from '#engine/written/question.ts';
import type { Topic } from '#engine/written/topic.ts';
import { nearestCure } from '#engine/compile/names.ts';
import type { SheetDrafts } from '#engine/compile/data-sheet.ts';
import type { Opened } from '#engine/compile/opened.ts';
import type { Written } from '#engine/compile/read-files.ts';
import { placeAt, type SourceFile } from '#engine/compile/source-file.ts';
import { checkAgainst } from './check-question.ts';
import { draftQuestion } from './draft-question.ts';
import { questionShelf, type QuestionShelf } from './shelf.ts';
import type { WrittenTopic } from './topic.ts';

/** Every topic that was written, checked against what the other files say. */
export function draftTopics(written: Written, drafts: SheetDrafts): ReadonlyMap<TopicId, Topic> {
  const shelf = questionShelf(written, drafts);
  return new Map([...written.topics].map(([id, topic]) => [id, draftTopic(id, topic, shelf)]));
}

/** A topic of the questions that could be read; its file has faults where some could not. */
function draftTopic(
  id: TopicId,
  { file, value }: Opened<WrittenTopic>,
  shelf: QuestionShelf,
): Topic {
  const { title, about, questions: written } = value;
  const sheet = sheetOfTopic(file, value, shelf);
  const questions = written.flatMap(([name, question]): readonly Question[] => {
    const place = { file, path: ['questions', name] };
    const drafted = draftQuestion(place, question, {
      id: name as QuestionId,
      topic: id,
      sheet,
      shelf,
    });
    if (!drafted) return [];
    checkAgainst(place, drafted, shelf);
    return [drafted];
  });
  return { id, title, about, questions };
}

function sheetOfTopic(
  file: SourceFile,
  { 'data-sheet': named }: WrittenTopic,
  { sheetIds, usualSheet }: QuestionShelf,
): DataSheetId | undefined {
  if (!named && usualSheet === undefined) {
    const cure = 'Add "data-sheet:" with the sheet that its numbers come from.';
    file.fault(
      'MISSING_KEY',
      { from: 0, to: 1 },
      'No method says which data sheet is meant.',
      cure,
    );
  }
  if (!named) return usualSheet;
  if (sheetIds.has(named)) return named;
  const message = `There is no data sheet "${named}".`;
  const cure = nearestCure(named, sheetIds);
  file.fault('UNKNOWN_DATA_SHEET', placeAt(file, ['data-sheet']), message, cure);
  return undefined;
}
