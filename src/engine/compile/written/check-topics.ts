import type { SourceId } from '#engine/method/method.ts';
import type { TopicId } from '#engine/written/question.ts';
import { checkName } from '#engine/compile/names.ts';
import type { Opened } from '#engine/compile/opened.ts';
import { keyAt, type Path } from '#engine/compile/source-file.ts';
import type { WrittenTopic } from './topic.ts';

/** What topics say of each other: no question twice, and those that explain one are there. */
export function checkTopics(topics: ReadonlyMap<TopicId, Opened<WrittenTopic>>): void {
  const home = new Map<string, string>();
  for (const { file, value } of topics.values()) {
    for (const [id] of value.questions) {
      const other = home.get(id);
      if (other === undefined) home.set(id, file.path);
      else {
        const message = `There is a question "${id}" in ${other} already.`;
        const cure = 'Give one of them another name.';
        file.fault('QUESTION_TWICE', keyAt(file, ['questions', id]), message, cure);
      }
    }
  }
  const known = new Set(home.keys());
  for (const { file, value } of topics.values()) {
    for (const [id, { explain }] of value.questions) {
      explain.forEach((other, index) => {
        const path = ['questions', id, 'explain', index];
        checkName(file, 'UNKNOWN_QUESTION', path, 'question', other, known);
      });
    }
  }
}

export const sourcesOfTopic = ({
  questions,
}: WrittenTopic): readonly (readonly [Path, SourceId])[] =>
  questions.map(([id, { source }]) => [['questions', id, 'source'], source] as const);
