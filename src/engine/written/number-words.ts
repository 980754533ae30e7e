import { quantityWords } from '#engine/measure/quantity-words.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import type { FixedRule, SheetNumber } from '#engine/method/data-sheet.ts';
import { languages, type Language, type Text } from '#engine/text.ts';

/**
 * A number of the data sheet within a sentence, without what its rule adds: `8 in`, and of a range both
 * ends, `6 to 8 in`. Undefined where it depends on the weather.
 */
export function numberWords({ rule }: SheetNumber): Text | undefined {
  return rule.kind === 'by' ? undefined : inEach((language) => ruleNumber(rule, language));
}

export const quantityText = (q: Quantity): Text => inEach((language) => quantityWords(q, language));

function ruleNumber(rule: FixedRule, language: Language): string {
  if (rule.kind !== 'between') return quantityWords(rule.value, language);
  const [low, high] = [quantityWords(rule.low, language), quantityWords(rule.high, language)];
  const unit = / \D+$/.exec(high)?.[0] ?? '';
  return `${low.endsWith(unit) ? low.slice(0, low.length - unit.length) : low} ${to[language]} ${high}`;
}

const to: Text = { en: 'to', es: 'a' };

export const inEach = (write: (language: Language) => string): Text =>
  Object.fromEntries(languages.map((language) => [language, write(language)])) as Text;
