/** Every screen that has a picture, and each address that has none with the reason. */
import { companyScreens } from './company-screens.ts';
import { examScreens } from './exam-screens.ts';
import { openScreens } from './open-screens.ts';
import type { Screen } from './screen.ts';

export const screens: readonly Screen[] = [...openScreens, ...companyScreens, ...examScreens];

export const withoutPicture: Readonly<Record<string, string>> = {
  '/shell': 'Nothing is ever drawn at it: it leads to the first page.',
};
