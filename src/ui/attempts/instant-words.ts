import { language } from '#ui/language/language.svelte.ts';

/** An instant as a person reads it, where and when they are. */
export const instantWords = (instant: string): string =>
  new Date(instant).toLocaleString(language.locale, { dateStyle: 'medium', timeStyle: 'short' });
