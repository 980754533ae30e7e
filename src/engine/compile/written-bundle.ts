import type { DataSheet } from '#engine/method/data-sheet.ts';
import type { DataSheetId, MethodId, SourceId } from '#engine/method/method.ts';
import type { Question } from '#engine/written/question.ts';
import type { Topic } from '#engine/written/topic.ts';
import { among } from './among.ts';
import type { Content, Source } from './content.ts';
import { madeForTopic } from './made-for-topic.ts';

/**
 * One topic with all that it names, but for the methods: their bundles are kept on their own, and with
 * those of `drawnOn` beside it a shelf to mark on is whole. It holds what is right; an exam sends what is
 * posed alone.
 */
export type WrittenBundle = {
  readonly revision: string;
  readonly topic: Topic;
  /** Made from the methods that the topic is about, for practice alone. */
  readonly made: readonly Question[];
  /** The methods whose walls a question shows. */
  readonly drawnOn: readonly MethodId[];
  readonly dataSheets: ReadonlyMap<DataSheetId, DataSheet>;
  readonly sources: ReadonlyMap<SourceId, Source>;
};

/** Undefined where there is no such topic. */
export function writtenBundle(content: Content, id: string): WrittenBundle | undefined {
  const topic = [...content.topics.values()].find((known) => known.id === id);
  if (!topic) return undefined;
  const made = madeForTopic(content, topic);
  const questions = [...topic.questions, ...made];
  const shown = questions.flatMap((question) =>
    question.kind === 'find-fault' ? [question.method] : [],
  );
  const dataSheets = among(
    content.dataSheets,
    questions.map(({ dataSheet }) => dataSheet),
  );
  const sources = among(content.sources, [
    ...questions.map(({ source }) => source),
    ...[...dataSheets.values()].flatMap(({ numbers }) =>
      [...numbers.values()].map(({ source }) => source),
    ),
  ]);
  return {
    revision: content.revision,
    topic,
    made,
    drawnOn: [...new Set(shown)],
    dataSheets,
    sources,
  };
}
