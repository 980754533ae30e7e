/** A screen that has its picture: where it stands, who sees it, and what is done there before it is taken. */
import type { Page } from '@playwright/test';
import type { Language } from '#engine/text.ts';
import type { Who } from './people-there.ts';

export type Screen = {
  /** Of its file, and by which it is asked for. */
  readonly name: string;
  /** As in `src/routes`. */
  readonly route: string;
  /** Nobody where it is left out: seen signed out. */
  readonly as?: Who;
  /** What stands for a part in brackets: something of the site's by its name, or the part as it is. */
  readonly with?: Readonly<Record<string, string>>;
  readonly query?: string;
  readonly then?: (page: Page, language: Language, known: Known) => Promise<void>;
  /** Where the step before has led to, when it leaves the address. */
  readonly leadsTo?: string;
  /** On a server that holds nothing yet. */
  readonly isFirstRun?: true;
};

export type Known = Readonly<Record<string, string>>;

export function addressOf({ route, with: parts = {}, query = '' }: Screen, known: Known): string {
  return (route + query).replaceAll(/\[([a-z]+)\]/g, (_, part: string) => {
    const name = parts[part] ?? part;
    return known[name] ?? name;
  });
}

/** Whether an address is one of a route. */
export const isAt = (route: string, path: string): boolean =>
  new RegExp(`^${route.replaceAll(/\[[a-z]+\]/g, '[^/]+')}$`).test(path);
