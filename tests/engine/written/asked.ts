import { openContent } from '#server/content.ts';
import type { Content } from '#engine/compile/content.ts';
import type { Question, QuestionKind } from '#engine/written/question.ts';
import { soundFolder } from '../../content/fixtures.ts';

/** A small content with a question of every kind. */
export const sound: Content = openContent(soundFolder);

const soundQuestions = [...sound.topics.values()].flatMap(({ questions }) => questions);

export const question = <K extends QuestionKind>(
  id: string,
  kind: K,
): Extract<Question, { readonly kind: K }> => {
  const found = soundQuestions.find((one) => one.id === id);
  if (found?.kind !== kind) throw new Error(`There is no ${kind} called ${id}.`);
  return found as Extract<Question, { readonly kind: K }>;
};

/** The sound content on a data sheet with other numbers under the same name. */
export const onChangedSheet: Content = {
  ...sound,
  dataSheets: new Map(
    [...sound.dataSheets].map(([id, sheet]) => [
      id,
      {
        ...sheet,
        numbers: [...sound.dataSheets.values()].find((one) => one.id === 'changed')!.numbers,
      },
    ]),
  ),
};
