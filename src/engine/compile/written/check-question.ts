import type { DataSheet } from '#engine/method/data-sheet.ts';
import { languages, type Text } from '#engine/text.ts';
import { withNumbers } from '#engine/written/fill-in.ts';
import type { Question } from '#engine/written/question.ts';
import { readsAs } from '#engine/written/reads-as.ts';
import { keyAt, type Path } from '#engine/compile/source-file.ts';
import { faultAt, type At } from './at.ts';
import { checkNumbers } from './check-numbers.ts';
import type { QuestionShelf } from './shelf.ts';
import { textsIn } from './texts-in.ts';

/** What can be asked of a question once it has been read: its numbers, and how its choices read. */
export function checkAgainst(at: At, question: Question, shelf: QuestionShelf): void {
  const sheet = shelf.dataSheets.get(question.dataSheet);
  if (!sheet) return;
  const isFilled = checkNumbers(at, textsIn(question), sheet, shelf);
  const choices = choicesIn(question);
  checkCount(at, question, choices);
  if (isFilled) checkUnlike(at, choices, sheet);
}

type Choice = { readonly path: Path; readonly say: Text; readonly isRight: boolean };

function choicesIn(question: Question): readonly Choice[] {
  const under = (path: Path, texts: readonly Text[], isRight: boolean): readonly Choice[] =>
    texts.map((say, index) => ({ path: [question.kind, ...path, index], say, isRight }));
  const wrongOnes = (wrong: readonly { readonly say: Text }[]): readonly Choice[] =>
    wrong.map(({ say }, index) => ({
      path: [question.kind, 'wrong', index, 'say'],
      say,
      isRight: false,
    }));
  switch (question.kind) {
    case 'choose-one': {
      const right = { path: [question.kind, 'right'], say: question.right, isRight: true };
      return [right, ...wrongOnes(question.wrong)];
    }
    case 'choose-all':
      return [...under(['right'], question.right, true), ...wrongOnes(question.wrong)];
    case 'order':
      return under(['steps'], question.steps, true);
    default:
      return [];
  }
}

const mostWrong = 4;
const steps = { least: 3, most: 7 };

function checkCount(at: At, { kind }: Question, choices: readonly Choice[]): void {
  const wrong = choices.filter(({ isRight }) => !isRight).length;
  const right = choices.length - wrong;
  const report = (below: Path, message: string, cure: string): void =>
    at.file.fault('CHOICE_COUNT', keyAt(at.file, [...at.path, kind, ...below]), message, cure);
  if (kind === 'choose-one' && (wrong < 2 || wrong > mostWrong)) {
    report(['wrong'], `Here are ${wrong} wrong choices.`, `Write 2 to ${mostWrong} of them.`);
  }
  if (kind === 'choose-all' && right === 0) {
    report(['right'], 'Nothing here is right to choose.', 'Write one right choice or more.');
  }
  if (kind === 'choose-all' && wrong === 0) {
    report(['wrong'], 'Everything here is right to choose.', 'Write one wrong choice or more.');
  }
  if (kind === 'order' && (right < steps.least || right > steps.most)) {
    const cure = `Write ${steps.least} to ${steps.most} of them.`;
    report(['steps'], `Here are ${right} steps to put in order.`, cure);
  }
}

/** No two choices may read alike in any language, least of all a right one and a wrong one. */
function checkUnlike(at: At, choices: readonly Choice[], sheet: DataSheet): void {
  const shown = choices.map((choice) => {
    const say = withNumbers(choice.say, sheet);
    return { ...choice, reads: { en: readsAs(say.en), es: readsAs(say.es) } };
  });
  shown.forEach((choice, place) => {
    const above = shown.slice(0, place);
    const language = languages.find((each) =>
      above.some(({ reads }) => reads[each] === choice.reads[each]),
    );
    if (language === undefined) return;
    const isMixed = above.some(
      ({ reads, isRight }) =>
        isRight !== choice.isRight && reads[language] === choice.reads[language],
    );
    const message = isMixed
      ? `In "${language}" this wrong choice reads like the right one.`
      : `In "${language}" this reads like a choice above it.`;
    const cure = 'Write something else, that is told apart when it is read aloud.';
    faultAt(
      at,
      [...choice.path, language],
      isMixed ? 'RIGHT_AMONG_WRONG' : 'CHOICE_TWICE',
      message,
      cure,
    );
  });
}
