import type { FixedRule } from '#engine/method/data-sheet.ts';
import { language } from '#ui/language/language.svelte.ts';
import { m } from '#ui/messages/generated/messages.js';
import { quantityWords } from './quantity-words.ts';

/** What a rule asks, in a few words: `8 in or more`, `6 to 8 in`. */
export function ruleWords(rule: FixedRule): string {
  const words = (q: Parameters<typeof quantityWords>[0]) => quantityWords(q, language.current);
  switch (rule.kind) {
    case 'exactly':
      return words(rule.value);
    case 'at-least':
      return m.rule_at_least({ value: words(rule.value) });
    case 'at-most':
      return m.rule_at_most({ value: words(rule.value) });
    case 'between':
      return m.rule_between({ low: words(rule.low), high: words(rule.high) });
    case 'about':
      return m.rule_about({ value: words(rule.value), within: words(rule.within) });
  }
}
