import type { Ratings } from './panels.ts';

const beginning = 'rating/';

/** Whole per cent by item; what cannot be read is left out. `given` is as it was entered, to be shown again. */
export function ratingsFrom(form: FormData): {
  readonly ratings: Ratings;
  readonly given: Readonly<Record<string, string>>;
} {
  const given: Record<string, string> = {};
  const ratings: Record<string, number> = {};
  for (const [name, value] of form) {
    if (!name.startsWith(beginning) || typeof value !== 'string') continue;
    const item = name.slice(beginning.length);
    given[item] = value.slice(0, 10);
    if (/^\d{1,3}$/.test(value.trim())) ratings[item] = Number(value);
  }
  return { ratings, given };
}
