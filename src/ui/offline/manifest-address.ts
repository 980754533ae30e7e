import type { Language } from '#engine/text.ts';

/** Browsers know no manifest in several languages, so there is one for each. */
export const manifestAddress = (language: Language): string => `/${language}.webmanifest`;
