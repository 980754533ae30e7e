import type { Weather } from '#engine/method/site.ts';
import { language } from '#ui/language/language.svelte.ts';
import { m } from '#ui/messages/generated/messages.js';
import { quantityWords } from './quantity-words.ts';

const names = {
  'air-temperature': m.condition_air,
  'surface-temperature': m.condition_surface,
  'relative-humidity': m.condition_humidity,
};

/** What the weather of a wall is, each condition with its value. */
export const weatherWords = (
  weather: Weather,
): readonly { readonly name: string; readonly value: string }[] =>
  [...weather].map(([condition, value]) => ({
    name: names[condition](),
    value: quantityWords(value, language.current),
  }));
