/** The languages by their own names, as people look for theirs. */
export const languageNames = { en: 'English', es: 'Español' } as const;

export const languageName = (language: string | null): string =>
  language === 'en' || language === 'es' ? languageNames[language] : '–';
