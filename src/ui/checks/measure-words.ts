import type { FixedRule } from '#engine/method/data-sheet.ts';
import { compare, subtract } from '#engine/measure/arithmetic.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import { bounds, leastOf } from '#engine/method/rule.ts';
import { language } from '#ui/language/language.svelte.ts';
import { quantityWords } from '#ui/measure/quantity-words.ts';
import { m } from '#ui/messages/generated/messages.js';

/** The unit that its data sheet writes a rule in: a bare number at the wall is meant so. */
export const unitOf = (rule: FixedRule): string =>
  quantityWords(leastOf(rule), 'en').replace(/^[-\d\s./]+/, '');

export const isOnTape = (rule: FixedRule): boolean => ['in', 'ft'].includes(unitOf(rule));

/** What stands on the sheet for what was written: a bare number with the unit of its rule. */
export const withUnit = (text: string, rule: FixedRule): string =>
  /^\s*-?[\d\s./,]*\d\s*$/.test(text) ? `${text.trim()} ${unitOf(rule)}`.trim() : text;

/** By how much a measure is out: `1/2 in too little`; nothing where it is within. */
export function outWords(rule: FixedRule, measured: Quantity): string | undefined {
  const { low, high } = bounds(rule);
  const far = (from: Quantity, to: Quantity) =>
    quantityWords(subtract(from as never, to as never), language.current);
  if (low && compare(measured, low) < 0) return m.checks_too_little({ value: far(low, measured) });
  if (high && compare(measured, high) > 0) return m.checks_too_much({ value: far(measured, high) });
  return undefined;
}
