import { formatExact } from '#engine/measure/format-exact.ts';
import { parseQuantity } from '#engine/measure/parse-quantity.ts';

/**
 * What a choice comes down to for who reads it: two that come down to the same read alike. A quantity is
 * its value, however it is written; of words, case, accents, marks and spaces do not count.
 */
export function readsAs(text: string): string {
  if (/\p{N}/u.test(text)) {
    const quantity = parseQuantity(text);
    if (quantity.ok) return formatExact(quantity.value);
  }
  return text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}<>≤≥%°]+/gu, ' ')
    .trim();
}
