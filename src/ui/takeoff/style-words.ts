import { unitOfStyle, type Style } from '#engine/takeoff/style.ts';
import { language } from '#ui/language/language.svelte.ts';
import { m } from '#ui/messages/generated/messages.js';

/** What the unit of a style is called beside a field: of feet and inches, the inch. */
export function styleWords(style: Style): string {
  if (style === '1' || style === 'each') return m.takeoff_unit_number();
  const { label } = unitOfStyle(style);
  return label[language.current][1];
}
