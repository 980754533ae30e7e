import { language } from '#ui/language/language.svelte.ts';

/** A day of the calendar as a person reads it: the same day wherever it is read. */
export const calendarDay = (day: string, dateStyle: 'medium' | 'long' = 'medium'): string =>
  new Date(`${day}T00:00:00Z`).toLocaleDateString(language.locale, { dateStyle, timeZone: 'UTC' });
