import type { FixedRule } from '#engine/method/data-sheet.ts';
import type { Text } from '#engine/text.ts';
import { quantityText } from './number-words.ts';

/** What a rule asks, in a few words: `8 in or more`. */
export function ruleText(rule: FixedRule): Text {
  switch (rule.kind) {
    case 'exactly':
      return quantityText(rule.value);
    case 'at-least': {
      const { en, es } = quantityText(rule.value);
      return { en: `${en} or more`, es: `${es} o más` };
    }
    case 'at-most': {
      const { en, es } = quantityText(rule.value);
      return { en: `${en} or less`, es: `${es} o menos` };
    }
    case 'between': {
      const [low, high] = [quantityText(rule.low), quantityText(rule.high)];
      return { en: `${low.en} to ${high.en}`, es: `de ${low.es} a ${high.es}` };
    }
    case 'about': {
      const [value, within] = [quantityText(rule.value), quantityText(rule.within)];
      return {
        en: `${value.en}, at most ${within.en} off`,
        es: `${value.es}, con ${within.es} de más o de menos`,
      };
    }
  }
}
