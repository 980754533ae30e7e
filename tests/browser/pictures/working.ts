import type { Screen } from './screen.ts';
import type * as work from './work.ts';

/** What is done by that name, loaded when it is done: the list of screens stays light to read. */
export const working =
  (name: keyof typeof work): NonNullable<Screen['then']> =>
  async (page, language, known) =>
    (await import('./work.ts'))[name](page, language, known);
