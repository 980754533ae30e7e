import { language } from '#ui/language/language.svelte.ts';

/** A day of the calendar as a person reads it, the same wherever they are. */
export const plainDay = (day: string): string =>
  new Date(`${day.slice(0, 10)}T12:00:00.000Z`).toLocaleDateString(language.locale, {
    dateStyle: 'long',
    timeZone: 'UTC',
  });
