import AxeBuilder from '@axe-core/playwright';
import { expect, type Page, test } from '@playwright/test';
import { awake } from './building.ts';

const contrast = ['color-contrast', 'color-contrast-enhanced'];
const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

const axeOn = (page: Page): AxeBuilder =>
  new AxeBuilder({ page })
    // A page without frames needs no second page to gather what was found in them.
    .setLegacyMode()
    // The rows of a long list are alike: the first ones stand for all.
    .exclude('main li:nth-child(n + 6)')
    .exclude('main label:nth-child(n + 6)')
    // What passes is only counted: to describe each of it takes most of the time.
    .options({
      resultTypes: ['violations'],
      rules: { 'color-contrast-enhanced': { enabled: true } },
    });

async function seenBy(axe: AxeBuilder): Promise<readonly string[]> {
  const { violations } = await axe.analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
}

/** Breaches of WCAG 2.2 A and AA, and of contrast at AAA, that axe can see on the page as it stands. */
export const breaches = (page: Page): Promise<readonly string[]> =>
  seenBy(axeOn(page).withTags(tags));

/** The same page on dark paper can only differ by its colours. */
export async function faintOnDark(page: Page): Promise<readonly string[]> {
  await page.emulateMedia({ colorScheme: 'dark' });
  const faint = await seenBy(axeOn(page).withRules(contrast));
  await page.emulateMedia({ colorScheme: 'light' });
  return faint;
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

/** Nothing wrong with a page as it stands. */
export async function isFit(page: Page): Promise<void> {
  await awake(page);
  expect(await breaches(page)).toEqual([]);
  expect(await overhang(page)).toBe(0);
  expect(await tooSmall(page)).toEqual([]);
}

/** Nothing wrong with a page on light paper, nor its colours on dark. */
export async function isFitOnBothPapers(page: Page): Promise<void> {
  await isFit(page);
  expect(await faintOnDark(page)).toEqual([]);
}

/** For whoever would rather look: a folder named by JOURNEY_PICTURES takes every page that is tested. */
async function picture(page: Page, name: string, language: string): Promise<void> {
  const folder = process.env['JOURNEY_PICTURES'];
  if (!folder) return;
  const path = `${folder}/${test.info().project.name}-${name}-${language}.png`;
  await page.screenshot({ path, fullPage: true });
}

/** Nothing wrong with a page in either language; its words may be longer, its parts are the same. */
export async function isFitInBoth(page: Page, name: string): Promise<void> {
  await isFit(page);
  await picture(page, name, 'en');
  await page.getByRole('button', { name: 'Español' }).click();
  await expect(page.locator('html')).toHaveAttribute('lang', 'es');
  expect(await overhang(page)).toBe(0);
  expect(await tooSmall(page)).toEqual([]);
  await picture(page, name, 'es');
  await page.getByRole('button', { name: 'English' }).click();
  await expect(page.locator('html')).toHaveAttribute('lang', 'en');
}
