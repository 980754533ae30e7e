/**
 * A question on its data sheet: its texts with the numbers of the sheet put in. A company changes a
 * number, and what was wrong beside it may then read like what is right; such a wrong choice is taken
 * away, and where too few are left the question is not asked on that sheet.
 */
import type { Shelf } from '#engine/marking/attempt-from.ts';
import { languages, type Text } from '#engine/text.ts';
import { withNumbers } from './fill-in.ts';
import type { Question, WrongChoice } from './question.ts';
import { readsAs } from './reads-as.ts';
import { withTexts } from './texts-of.ts';

declare const filledIn: unique symbol;

/** A question as it is asked: no name in braces is left in its texts. */
export type Fitted<Q extends Question = Question> = Q & { readonly [filledIn]: true };

/** Undefined where its data sheet is not there, or leaves nothing wrong to choose. */
export function fitted(question: Question, { dataSheets }: Shelf): Fitted | undefined {
  const sheet = dataSheets.get(question.dataSheet);
  if (!sheet) return undefined;
  const full = withTexts(question, (text) => withNumbers(text, sheet));
  switch (full.kind) {
    case 'choose-one':
    case 'choose-all': {
      const right = full.kind === 'choose-one' ? [full.right] : full.right;
      const wrong = unlike(right, full.wrong);
      return wrong.length > 0 && areUnlike(right) ? fit({ ...full, wrong }) : undefined;
    }
    case 'order':
      return areUnlike(full.steps) ? fit(full) : undefined;
    default:
      return fit(full);
  }
}

const fit = (question: Question): Fitted => question as Fitted;

export const areAlike = (a: Text, b: Text): boolean =>
  languages.some((language) => readsAs(a[language]) === readsAs(b[language]));

const areUnlike = (texts: readonly Text[]): boolean =>
  texts.every((text, place) => !texts.slice(0, place).some((other) => areAlike(text, other)));

function unlike(right: readonly Text[], wrong: readonly WrongChoice[]): readonly WrongChoice[] {
  const kept: WrongChoice[] = [];
  for (const choice of wrong) {
    const others = [...right, ...kept.map(({ say }) => say)];
    if (!others.some((other) => areAlike(other, choice.say))) kept.push(choice);
  }
  return kept;
}
