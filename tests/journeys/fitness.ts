import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';

/** Breaches of WCAG 2.2 A and AA, and of contrast at AAA, that axe can see on the page as it stands. */
export async function breaches(page: Page): Promise<readonly string[]> {
  const { violations } = await new AxeBuilder({ page })
    // The rows of a long list are alike: the first ones stand for all.
    .exclude('main li:nth-child(n + 6)')
    .exclude('main label:nth-child(n + 6)')
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
    .options({ rules: { 'color-contrast-enhanced': { enabled: true } } })
    .analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
}

/** How far the page can be pushed sideways. */
export const overhang = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** The names of what can be pressed and is too small for a thumb in a glove, 48 px each way. */
export const tooSmall = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('main :is(button, summary, .button, label.card)')]
      // What is out of sight and out of the tab order only names what Enter does.
      .filter((part) => part.offsetParent !== null && part.tabIndex >= 0)
      .filter((part) => {
        const { width, height } = part.getBoundingClientRect();
        return width > 0 && (width < 47.5 || height < 47.5);
      })
      .map((part) => `${part.textContent?.trim()} ${part.offsetWidth}x${part.offsetHeight}`),
  );
