import type { Text } from '#engine/text.ts';
import type { ChoicePart, NumberVerdict, Outcome, PlacedStep } from '#engine/written/verdict.ts';
import { say } from '#ui/language/language.svelte.ts';
import { m } from '#ui/messages/generated/messages.js';

export const outcomeLabels: Readonly<Record<Outcome, () => string>> = {
  right: m.written_right,
  partly: m.written_partly,
  wrong: m.written_wrong,
};

export const partWords = ({ isRight, isTaken }: ChoicePart): string => {
  if (isRight) return isTaken ? m.written_taken_right() : m.written_left_right();
  return isTaken ? m.written_taken_wrong() : m.written_left_wrong();
};

export const offWords = ({ off }: PlacedStep): string => {
  if (off === undefined) return '';
  if (off === 0) return m.written_in_place();
  return off > 0 ? m.written_late({ count: off }) : m.written_early({ count: -off });
};

/** What was found about a number, but for its reason. */
export const foundWords = ({ found }: Pick<NumberVerdict, 'found'>, unit: Text): string => {
  switch (found) {
    case 'unreadable':
      return m.written_unreadable();
    case 'too-low':
      return m.written_too_low();
    case 'too-high':
      return m.written_too_high();
    case 'wrong-unit':
      return m.written_wrong_unit({ unit: say(unit) });
    case 'right':
    case 'slip':
      return '';
  }
};
