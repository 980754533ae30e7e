import { language } from '#ui/language/language.svelte.ts';

/** The day of an instant as a person reads it. */
export const dayWords = (instant: string, locale = language.locale): string =>
  new Date(instant).toLocaleDateString(locale, { dateStyle: 'long' });
