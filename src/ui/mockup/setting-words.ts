import { parseQuantity } from '#engine/measure/parse-quantity.ts';
import { language } from '#ui/language/language.svelte.ts';
import { quantityWords } from '#ui/measure/quantity-words.ts';
import type { AskToSet } from './setting-entry.svelte.ts';

/** The settings of a card as they were made, in the language of the screen: `8 in, 1/2 in`. */
export const settingWords = (
  card: { readonly asks: readonly Pick<AskToSet, 'id' | 'sheetNumber'>[] } | undefined,
  settings: Readonly<Record<string, string>> = {},
): string =>
  (card?.asks ?? [])
    .flatMap(({ id, sheetNumber }) => {
      const read = parseQuantity(settings[id] ?? '', sheetNumber.dimension);
      return read.ok ? [quantityWords(read.value, language.current)] : [];
    })
    .join(', ');
