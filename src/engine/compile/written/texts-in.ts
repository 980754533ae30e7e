import type { Text } from '#engine/text.ts';
import type { Question } from '#engine/written/question.ts';
import type { Path } from '#engine/compile/source-file.ts';

export type TextAt = readonly [path: Path, text: Text];

/** Every text of a question, and where it stands under it. */
export function textsIn(question: Question): readonly TextAt[] {
  const { kind, ask, point } = question;
  return [
    [['ask'], ask],
    [['point'], point],
    ...textsOfKind(question).map(([path, text]): TextAt => [[kind, ...path], text]),
  ];
}

function textsOfKind(question: Question): readonly TextAt[] {
  switch (question.kind) {
    case 'choose-one':
      return [[['right'], question.right], ...wrongTexts(question.wrong)];
    case 'choose-all':
      return [
        ...question.right.map((text, index): TextAt => [['right', index], text]),
        ...wrongTexts(question.wrong),
      ];
    case 'order':
      return [
        ...question.steps.map((text, index): TextAt => [['steps', index], text]),
        [['because'], question.because],
      ];
    case 'number':
      return question.slips.map(({ because }, index): TextAt => [
        ['slips', index, 'because'],
        because,
      ]);
    case 'find-fault':
      return [[['because'], question.because]];
  }
}

const wrongTexts = (
  wrong: readonly { readonly say: Text; readonly because: Text }[],
): readonly TextAt[] =>
  wrong.flatMap(({ say, because }, index): TextAt[] => [
    [['wrong', index, 'say'], say],
    [['wrong', index, 'because'], because],
  ]);
