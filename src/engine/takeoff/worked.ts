/**
 * The worked solution of one part, made from its formula: why, what is looked up, what is computed in
 * words, the numbers put in with their units, then the formula worked down to the result, and the
 * rounding. As many lines as the formula is deep, and a few more.
 */
import type { Text } from '#engine/text.ts';
import type { PartId, RoundRule } from './family.ts';
import { inEach } from './fill-text.ts';
import type { Instance, Solved } from './instance.ts';
import { filledText, writeAnswer } from './problem.ts';
import { nameLeaf, show, valueLeaf } from './shown-values.ts';
import { isLeaf, lineOf } from './shown.ts';
import { chartLines, conversions } from './worked-beside.ts';
import type { WorkedLine } from './worked-line.ts';
import { choose, signed, sinceLines, stepsFrom } from './worked-steps.ts';

export type { WorkedLine };

/** Throws a RangeError where the problem has no such part. */
export function workedSolution(instance: Instance, id: PartId): readonly WorkedLine[] {
  const solved = instance.parts.find(({ part }) => part.id === id);
  if (!solved) throw new RangeError(`The problem has no part "${id}".`);
  const { part } = solved;
  const chosen = choose(part.formula.root, instance);
  const names = show(chosen, (term) => nameLeaf(term, instance));
  const numbers = show(chosen, (term) => valueLeaf(term, instance, part));
  return [
    ...(part.why ? [{ kind: 'why', text: filledText(instance, part.why) } as const] : []),
    ...sinceLines(part.formula.root, instance, part),
    ...chartLines(chosen, instance),
    ...(isLeaf(numbers) ? [] : [{ kind: 'words', text: lineOf(names) } as const]),
    ...conversions(chosen, instance, part),
    { kind: 'numbers', text: signed(numbers) },
    ...stepsFrom(numbers, instance, part),
    ...ending(solved),
  ];
}

function ending({ part, exact, right }: Solved): readonly WorkedLine[] {
  const { answer } = part;
  const text = inEach((language) => writeAnswer(answer, right, language));
  const isRounded =
    answer.kind === 'quantity' &&
    answer.round !== undefined &&
    typeof exact !== 'boolean' &&
    typeof right !== 'boolean' &&
    !exact.value.equals(right.value);
  return [
    ...(isRounded ? [{ kind: 'round', text: roundingText(answer.round, text) } as const] : []),
    { kind: 'answer', text: inEach((language) => `${part.name[language]}: ${text[language]}`) },
  ];
}

const roundingWords: Readonly<Record<RoundRule['how'], Text>> = {
  up: { en: 'rounded up', es: 'redondeado hacia arriba' },
  down: { en: 'rounded down', es: 'redondeado hacia abajo' },
  nearest: { en: 'rounded to the nearest', es: 'redondeado al más cercano' },
};

const roundingText = ({ how }: RoundRule, answer: Text): Text =>
  inEach((language) => `→ ${roundingWords[how][language]}: ${answer[language]}`);
