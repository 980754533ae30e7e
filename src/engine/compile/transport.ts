/**
 * Content on its way to a browser or a file, as text that devalue writes: maps stay maps, what is
 * shared is written once, and quantities stay exact.
 */
import { parse, stringify } from 'devalue';
import { decodeQuantity, encodeQuantity } from '#engine/measure/encode-quantity.ts';
import type { Quantity } from '#engine/measure/quantity.ts';

/** Any part of content, or something made of such parts. */
export const toText = (value: unknown): string =>
  stringify(value, { Quantity: (part: unknown) => isQuantity(part) && encodeQuantity(part) });

/** What `toText` was given; throws where the text is of another making. */
export const fromText = (text: string): unknown => parse(text, { Quantity: quantityFrom });

function isQuantity(part: unknown): part is Quantity {
  if (typeof part !== 'object' || part === null) return false;
  const { value, dimension } = part as Partial<Quantity>;
  return typeof value?.d === 'bigint' && typeof dimension?.powers === 'object';
}

function quantityFrom(encoded: unknown): Quantity {
  const decoded = decodeQuantity(encoded);
  if (!decoded.ok) throw new RangeError(decoded.error.message.en);
  return decoded.value;
}
