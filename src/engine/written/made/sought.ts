import { compare } from '#engine/measure/arithmetic.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import type { FixedRule } from '#engine/method/data-sheet.ts';
import { judge, middleOf } from '#engine/method/rule.ts';
import type { Ask } from '#engine/method/sequence.ts';
import type { PatternId } from '#engine/written/patterns.ts';

/** The one value that a question about a number asks for. */
export type Sought = {
  readonly value: Quantity;
  readonly pattern: Extract<PatternId, 'least-ask' | 'most-ask' | 'value-ask'>;
  readonly isWrong: (value: Quantity) => boolean;
  readonly isWithin: (value: Quantity) => boolean;
};

export function soughtIn({
  rule,
  sheetNumber: { aim },
}: Pick<Ask, 'rule' | 'sheetNumber'>): Sought {
  const isWithin = (value: Quantity): boolean => judge(rule, value).within;
  const pattern = patternOf(rule);
  if (pattern === 'value-ask') {
    const value = aim && isWithin(aim) ? aim : middleOf(rule);
    return { value, pattern, isWithin, isWrong: (other) => !isWithin(other) };
  }
  const value = middleOf(rule);
  return { value, pattern, isWithin, isWrong: (other) => compare(other, value) !== 0 };
}

function patternOf({ kind }: FixedRule): Sought['pattern'] {
  if (kind === 'at-least') return 'least-ask';
  return kind === 'at-most' ? 'most-ask' : 'value-ask';
}
