/**
 * The language of the screen. On the server every request has its own, which paraglide keeps; in the
 * browser it is state, so that choosing another rewrites every sentence in place.
 */
import { languages, type Language, type Text } from '#engine/text.ts';
import {
  extractLocaleFromCookie,
  extractLocaleFromNavigator,
  getLocale,
  overwriteGetLocale,
  setLocale,
} from '#ui/messages/generated/runtime.js';

const inBrowser = typeof document !== 'undefined';

/** Whose dates and numbers a language is written with: North America's, with a decimal point. */
const locales: Readonly<Record<Language, string>> = { en: 'en-US', es: 'es-MX' };

const isLanguage = (word: string | undefined): word is Language =>
  languages.some((language) => language === word);

/**
 * A page that was sent is taken over in the language it was written in; an empty one is written in the
 * language that was chosen before, or that the browser prefers.
 */
function first(): Language {
  const sent = document.documentElement.lang;
  if (isLanguage(sent)) return sent;
  const wanted = [extractLocaleFromCookie(), extractLocaleFromNavigator()];
  return wanted.find(isLanguage) ?? 'en';
}

let chosen = $state<Language>('en');

function show(language: Language): void {
  chosen = language;
  document.documentElement.lang = language;
}

if (inBrowser) {
  overwriteGetLocale(() => chosen);
  show(first());
}

export const language = {
  get current(): Language {
    return getLocale();
  },

  /** The same for `Intl`, whose plain Spanish would write a decimal comma. */
  get locale(): string {
    return locales[getLocale()];
  },

  /** At once, and remembered in a cookie so that the server's next page agrees. */
  choose(next: Language): void {
    void setLocale(next, { reload: false });
    show(next);
  },

  /** A page kept for use without signal may be older than the choice: the cookie is right. */
  recall(): void {
    const kept = extractLocaleFromCookie();
    if (isLanguage(kept) && kept !== chosen) show(kept);
  },
};

/** Text of the content in the language of the screen. */
export const say = (text: Text): string => text[language.current];
