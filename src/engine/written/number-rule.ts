import { compare } from '#engine/measure/arithmetic.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import type { Entry, FixedRule } from '#engine/method/data-sheet.ts';
import { limitsOf } from '#engine/method/offered.ts';
import { bounds } from '#engine/method/rule.ts';
import type { Shelf } from '#engine/marking/attempt-from.ts';
import type { GiveNumber } from './question.ts';

/** What makes an answer right. */
export type NumberRule = { readonly rule: FixedRule; readonly entry: Entry | undefined };

/** Undefined where the sheet has no such number, or one that depends on the weather. */
export function numberRule(
  { answer, dataSheet }: Pick<GiveNumber, 'answer' | 'dataSheet'>,
  { dataSheets }: Pick<Shelf, 'dataSheets'>,
): NumberRule | undefined {
  if (answer.kind === 'quantity') {
    const { value, within } = answer;
    const rule: FixedRule = within ? { kind: 'about', value, within } : { kind: 'exactly', value };
    return { rule, entry: undefined };
  }
  const number = dataSheets.get(dataSheet)?.numbers.get(answer.number);
  if (!number || number.rule.kind === 'by') return undefined;
  return { rule: number.rule, entry: number.entry };
}

/**
 * Below 0 where the value is too low, above where it is too high, 0 where it is right. A rule that is open
 * at one end ends where nobody can set any more: 100 ft is not "8 in or more".
 */
export function strays({ rule, entry }: NumberRule, given: Quantity): -1 | 0 | 1 {
  const { low, high } = bounds(rule);
  const ends = entry && limitsOf(entry);
  const [least, most] = [low ?? ends?.from, high ?? ends?.to];
  if (least && compare(given, least) < 0) return -1;
  if (most && compare(given, most) > 0) return 1;
  return 0;
}
